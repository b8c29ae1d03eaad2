/* A restore that is killed leaves one whole book at its path, whenever that happens. */
#include "backed_up.h"
#include "dying.h"

#include <sys/wait.h>

int rename(const char *from, const char *to)
{
	tick();
	int code = (int)syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
	tick();
	return code;
}

/* Ends the restore at its n-th call; false when it came to its end. */
static bool killed_at(const struct desk *d, const char *backup, int n)
{
	char kept[128];
	int status;
	pid_t child = fork();

	if (child == 0) {
		struct err err;
		die_at = n;
		_exit(book_restore(d->path, backup, kept, sizeof kept, &err) ? 0 : 1);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status) &&
		    (WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == 77));
	return WEXITSTATUS(status) == 77;
}

static void book_restore_killed_at_any_step_leaves_one_whole_book(void **state)
{
	char backup[128];
	bool killed = true;
	int steps = 0, old = 0;

	(void)state;
	while (killed) {
		struct desk d;
		int found;
		backed_up(&d, backup, sizeof backup);
		killed = killed_at(&d, backup, ++steps);
		must(d.book = book_open(d.path, BOOK_EXISTING, "JR", e));
		must(book_check(d.book, 30000, tell_nobody, NULL, &found, e));
		assert_int_equal(found, 1); /* never hung, as from the start */
		int64_t n = store_number(d.book, "SELECT count(*) FROM visit", 0);
		assert_true(n == 1 || n == 2);
		old += n == 2;
		assert_int_equal(visits_at(backup), 1);
		desk_clear(&d);
	}
	assert_true(steps > 6 && old > 3 && old < steps);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_restore_killed_at_any_step_leaves_one_whole_book),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
