#define _XOPEN_SOURCE 700 /* nftw */

#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "command/command.h"
#include "program.h"

#include <dirent.h>
#include <sys/stat.h>

static int write_file(const char *path, const char *text, struct err *e)
{
	struct buf b = { 0 };

	buf_add(&b, text);
	int ok = out_file(path, &b, e);
	buf_free(&b);
	return ok;
}

static void check_file(const char *path, const char *want)
{
	struct buf got = { 0 };

	program_read(path, &got);
	assert_string_equal(got.text, want);
	buf_free(&got);
}

/* Files of the working folder, those that begin with a dot too. */
static int count_files(void)
{
	DIR *d = opendir(".");
	int n = 0;

	while (readdir(d))
		n++;
	closedir(d);
	return n - 2;
}

static void out_file_makes_a_new_file(void **state)
{
	struct err e = { 0 };
	int before = count_files();

	(void)state;
	assert_true(write_file("new.txt", "one\n", &e));
	check_file("new.txt", "one\n");
	assert_int_equal(count_files(), before + 1);
	unlink("new.txt");
}

static void out_file_replaces_a_plain_file_and_keeps_its_mode(void **state)
{
	struct stat status;
	struct err e = { 0 };

	(void)state;
	program_write("old.txt", "a longer text than the new one\n");
	assert_int_equal(chmod("old.txt", 0640), 0);
	assert_true(write_file("old.txt", "two\n", &e));
	check_file("old.txt", "two\n");
	assert_int_equal(stat("old.txt", &status), 0);
	assert_int_equal(status.st_mode & 0777, 0640);
	unlink("old.txt");
}

static void out_file_refuses_what_is_no_plain_file(void **state)
{
	static const struct {
		const char *why, *path, *says;
	} row[] = {
		{ "a folder", "folder", "folder is a folder" },
		{ "a link", "link.txt", "link.txt is a link" },
		{ "a link that leads nowhere", "lost.txt", "lost.txt is a link" },
		{ "a device", "/dev/full", "/dev/full is no plain file" },
		{ "no such folder", "none/new.txt",
			"none/new.txt could not be written" },
		{ "no name", "", "could not be written" },
	};
	int before;

	(void)state;
	mkdir("folder", 0700);
	program_write("plain.txt", "kept\n");
	assert_int_equal(symlink("plain.txt", "link.txt"), 0);
	assert_int_equal(symlink("nowhere", "lost.txt"), 0);
	before = count_files();
	for (size_t i = 0; i < sizeof row / sizeof *row; i++) {
		struct err e = { 0 };

		if (write_file(row[i].path, "new\n", &e) || e.kind != ERR_BOOK ||
			!strstr(e.text, row[i].says))
			fail_msg("%s: \"%s\"", row[i].why, e.text);
	}
	check_file("plain.txt", "kept\n");
	assert_int_equal(count_files(), before);
}

static void out_print_is_an_error_when_the_disk_is_full(void **state)
{
	struct ran r = { 0 };

	(void)state;
	program_run_to(&r, "/dev/full", "--version");
	assert_int_equal(r.status, 5);
	assert_non_null(strstr(r.err.text, "the output could not be written"));
	program_forget(&r);
}

/* Starts the program with a stdout whose reader is gone, or with none at all. */
static int status_without_reader(bool closed)
{
	char path[PATH_MAX];
	int ends[2], status = 0;

	program_path(path, sizeof path);
	assert_int_equal(pipe(ends), 0);
	pid_t child = fork();
	if (child == 0) {
		dup2(ends[1], STDOUT_FILENO);
		close(ends[0]);
		close(ends[1]);
		if (closed)
			close(STDOUT_FILENO);
		if (!freopen("stderr.txt", "w", stderr))
			_exit(126);
		execl(path, path, "--help", (char *)NULL);
		_exit(127);
	}
	close(ends[0]);
	close(ends[1]);
	waitpid(child, &status, 0);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static void out_print_ends_quietly_when_the_reader_is_gone(void **state)
{
	struct buf err = { 0 };

	(void)state;
	assert_int_equal(status_without_reader(false), 5);
	program_read("stderr.txt", &err);
	assert_string_equal(err.text, "");
	buf_free(&err);
}

static void out_print_complains_when_there_is_no_stdout(void **state)
{
	struct buf err = { 0 };

	(void)state;
	assert_int_equal(status_without_reader(true), 5);
	program_read("stderr.txt", &err);
	assert_non_null(strstr(err.text, "the output could not be written"));
	buf_free(&err);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(out_file_makes_a_new_file),
		cmocka_unit_test(out_file_replaces_a_plain_file_and_keeps_its_mode),
		cmocka_unit_test(out_file_refuses_what_is_no_plain_file),
		cmocka_unit_test(out_print_is_an_error_when_the_disk_is_full),
		cmocka_unit_test(out_print_ends_quietly_when_the_reader_is_gone),
		cmocka_unit_test(out_print_complains_when_there_is_no_stdout),
	};

	return cmocka_run_group_tests(tests, program_setup, program_teardown);
}
