#include <setjmp.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>

#include <cmocka.h>

#include "base/mem.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/wait.h>
#include <unistd.h>

static void mem_grow_zeroes_the_new_part_and_keeps_the_old(void **state)
{
	size_t cap = 0;
	int32_t *items = NULL;

	(void)state;
	for (size_t n = 0; n < 1000; n++) {
		items = mem_grow(items, &cap, n + 1, sizeof *items);
		assert_true(cap > n);
		for (size_t i = n; i < cap; i++)
			assert_int_equal(items[i], 0);
		items[n] = (int32_t)n + 1;
	}
	for (size_t n = 0; n < 1000; n++)
		assert_int_equal(items[n], n + 1);
	free(items);
}

static void mem_grow_moves_seldom(void **state)
{
	size_t cap = 0;
	char *items = NULL;
	int grown = 0;

	(void)state;
	for (size_t n = 1; n <= 1000000; n++) {
		size_t before = cap;
		items = mem_grow(items, &cap, n, 1);
		grown += cap != before;
	}
	assert_in_range(grown, 1, 40); /* 1.5 to the power of 40 is 11 million */
	free(items);
}

static void mem_grow_leaves_what_is_large_enough(void **state)
{
	size_t cap = 0;
	char *items = mem_grow(NULL, &cap, 100, 8);

	(void)state;
	assert_true(cap >= 100);
	size_t before = cap;
	assert_ptr_equal(mem_grow(items, &cap, before, 8), items);
	assert_int_equal(cap, before);
	free(items);
}

/* Lets malloc fail under the address sanitizer as it does without. */
const char *__asan_default_options(void);
const char *__asan_default_options(void)
{
	return "allocator_may_return_null=1";
}

/* The exit status of a child that asks for that much; 0 if it got it. */
static int ask(size_t need, size_t size)
{
	int status;
	pid_t child = fork();

	if (child == 0) {
		size_t cap = 0;
		fclose(stderr);
		free(mem_grow(NULL, &cap, need, size));
		_exit(0);
	}
	assert_int_equal(waitpid(child, &status, 0), child);
	return WIFEXITED(status) ? WEXITSTATUS(status) : -1;
}

static void mem_grow_ends_the_program_when_there_is_no_room(void **state)
{
	(void)state;
	assert_int_equal(ask(10, 10), 0);
	assert_int_equal(ask(SIZE_MAX / 2, 1), 5);
	assert_int_equal(ask(SIZE_MAX / 8, 8), 5);
}

static void mem_grow_does_not_wrap_round(void **state)
{
	(void)state;
	/* times 8 these are 8 and 0 bytes to a careless multiplication */
	assert_int_equal(ask(SIZE_MAX / 8 + 2, 8), 5);
	assert_int_equal(ask(SIZE_MAX / 8 + 1, 8), 5);
}

static void mem_new_gives_a_zeroed_block_even_for_nothing(void **state)
{
	(void)state;
	int *items = mem_new(50, sizeof *items);
	for (int i = 0; i < 50; i++)
		assert_int_equal(items[i], 0);
	free(items);
	char *none = mem_new(0, sizeof *none);
	assert_non_null(none);
	free(none);
}

static void mem_text_copies(void **state)
{
	const char *text = "North";
	char *copy = mem_text(text);

	(void)state;
	assert_ptr_not_equal(copy, text);
	assert_string_equal(copy, text);
	free(copy);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(mem_grow_zeroes_the_new_part_and_keeps_the_old),
		cmocka_unit_test(mem_grow_moves_seldom),
		cmocka_unit_test(mem_grow_leaves_what_is_large_enough),
		cmocka_unit_test(mem_grow_ends_the_program_when_there_is_no_room),
		cmocka_unit_test(mem_grow_does_not_wrap_round),
		cmocka_unit_test(mem_new_gives_a_zeroed_block_even_for_nothing),
		cmocka_unit_test(mem_text_copies),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
