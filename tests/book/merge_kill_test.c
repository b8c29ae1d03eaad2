/* A merge that is killed at any moment leaves the old book or the merged one. */
#include "dying.h"
#include "merging.h"

#include <sys/wait.h>

/* Ends the merge at its n-th call; false when it came to its end. */
static bool killed_at(const char *into, const char *from, int n)
{
	int status;
	pid_t child = fork();

	if (child == 0) {
		struct merge_report report = { 0 };
		struct err err;
		die_at = n;
		struct book *b = book_open(into, BOOK_EXISTING, "JR", &err);
		_exit(b && book_merge(b, from, &report, &err) ? 0 : 1);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	assert_true(WIFEXITED(status) &&
		    (WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == 77));
	return WEXITSTATUS(status) == 77;
}

static char *content_of(const char *path)
{
	int found, faults = 0;
	struct book *b;

	must(b = book_open(path, BOOK_EXISTING, "JR", e));
	must(book_check(b, 30000, tell_fault, &faults, &found, e));
	assert_int_equal(faults, 0);
	char *content = book_content(b);
	book_close(b);
	return content;
}

static void another_book(struct shelf *s, const char *who, int32_t day, char out[96])
{
	struct desk d;

	desk_memory(&d);
	struct visit v = counted(d.trap, day, 7);
	book_set_who(d.book, who);
	must(book_save_visit(d.book, &v, NULL, e));
	shelf_put(s, d.book, out);
	desk_clear(&d);
}

static void merge_killed_at_any_step_leaves_one_whole_book(void **state)
{
	char start[96], other[96], into[96];
	char *old = NULL, *merged = NULL;
	int steps, olds = 0, news = 0;
	struct shelf s;

	(void)state;
	shelf_make(&s);
	another_book(&s, "JR", DAY0, start);
	another_book(&s, "MB", DAY0 + 7, other);
	shelf_copy(&s, start, into);
	old = content_of(into);
	assert_false(killed_at(into, other, 0));
	merged = content_of(into);
	assert_string_not_equal(old, merged);
	for (steps = 1, into[0] = '\0';; steps++) {
		shelf_copy(&s, start, into);
		bool killed = killed_at(into, other, steps);
		char *now = content_of(into);
		bool is_old = strcmp(now, old) == 0, is_new = strcmp(now, merged) == 0;
		free(now);
		if (!is_old && !is_new)
			fail_msg("killed at call %d: neither book", steps);
		olds += is_old;
		news += is_new;
		if (!killed)
			break;
	}
	assert_true(steps > 6 && olds > 4 && news >= 1);
	free(old);
	free(merged);
	drop_folder(s.folder);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(merge_killed_at_any_step_leaves_one_whole_book),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
