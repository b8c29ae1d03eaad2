/* Hundreds of random entries of all families, made as the pages make them: taken back,
 * they leave what there was, in every kind of file. */
#include "typed.h"

#include "form_dice.h"

#include <time.h>

enum { EDITS = 500, WARM = 80, SEEDS = 4, SEEDS_SANITIZED = 1 };

#if defined(__SANITIZE_ADDRESS__)
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif
#ifndef SANITIZED
#define SANITIZED 0
#endif

static void dice_open(struct dice *d, unsigned seed)
{
	*d = (struct dice){
		.book = farm_book(), .first = seed, .seed = seed, .today = day_of(TODAY)
	};
	must_take(d->book, "blocks", "farm,block\nQuarle Top,\"Bank, lower\"\n");
	must_take(d->book, "stations", "station,farm\nWeir,Quarle Top\nMast,\n");
	dice_read(d);
	while (d->done < WARM)
		dice_edit(d);
}

static void dice_close(struct dice *d)
{
	log_free(&d->log);
	book_close(d->book);
}

static void assert_same(
	const char *got, const char *want, const char *of, unsigned seed)
{
	size_t at = 0;

	while (got[at] && got[at] == want[at])
		at++;
	if (got[at] == want[at])
		return;
	while (at > 0 && got[at - 1] != '\n')
		at--;
	fail_msg("seed %u, %s taken back:\n%.300s\nnot\n%.300s", seed, of, got + at,
		want + at);
}

/* What the files held before each step that can still be taken back. */
struct befores {
	char *files[WARM + EDITS * 2];
	int n, undone;
};

static int64_t latest_step(struct dice *d)
{
	struct err e = { 0 };
	int64_t step = 0;

	if (!book_latest_step(d->book, &step, &e))
		fail_msg("%s", e.text);
	return step;
}

/* False: nothing is left. */
static bool undo(struct dice *d, struct befores *b, int64_t start)
{
	struct undone_step u;
	struct err e = { 0 };

	if (!book_undo_step(d->book, NULL, start, &u, &e)) {
		if (e.kind != ERR_NOT_FOUND || b->n > 0)
			fail_msg("seed %u, %d steps left: %s", d->first, b->n, e.text);
		return false;
	}
	char *now = give_all(d->book);
	assert_same(now, b->files[--b->n], u.name, d->first);
	free(b->files[b->n]);
	free(now);
	b->undone++;
	return true;
}

/* Some are taken back in between, as a grower does who sees a slip. */
static void edit_and_undo(struct dice *d, struct befores *b, int64_t start)
{
	char *before = give_all(d->book);

	for (int upto = d->done + EDITS; d->done < upto;) {
		int64_t step = latest_step(d);
		dice_edit(d);
		if (latest_step(d) == step)
			continue;
		b->files[b->n++] = before;
		if (dice_roll(d, 6) == 0 && undo(d, b, start))
			dice_read(d);
		before = give_all(d->book);
	}
	free(before);
}

static void add_up(struct dice *all, const struct dice *d)
{
	for (int i = 0; i < ENTRY_KINDS; i++)
		all->of_family[i] += d->of_family[i];
	for (int i = 0; i < DICE_OPS; i++)
		all->of_op[i] += d->of_op[i];
	all->done += d->done;
	all->refused += d->refused;
}

/* A family or a way in whose entries are all refused would be tested in name alone. */
static void every_way_was_gone(const struct dice *all, int seeds)
{
	for (int i = 0; i < ENTRY_KINDS; i++)
		if (all->of_family[i] < 2 * seeds)
			fail_msg("%s: %d forms in %d seeds", entry_families[i].name,
				all->of_family[i], seeds);
	for (int i = 0; i < DICE_OPS; i++)
		if (all->of_op[i] < 2 * seeds)
			fail_msg("%s: %d in %d seeds", dice_op_name(i), all->of_op[i],
				seeds);
}

static void forms_taken_back_leave_every_file_as_it_was(void **state)
{
	int seeds = SANITIZED ? SEEDS_SANITIZED : SEEDS, undone = 0;
	struct dice all = { 0 };
	clock_t began = clock();

	(void)state;
	for (unsigned seed = 1; seed <= (unsigned)seeds; seed++) {
		struct befores *b = mem_new(1, sizeof *b);
		struct dice d;
		dice_open(&d, seed);
		int64_t start = latest_step(&d);
		char *first = give_all(d.book);
		edit_and_undo(&d, b, start);
		assert_true(b->n > EDITS / 4);
		while (undo(&d, b, start))
			continue;
		char *last = give_all(d.book);
		assert_same(last, first, "all", seed);
		add_up(&all, &d);
		undone += b->undone;
		free(b);
		free(first);
		free(last);
		dice_close(&d);
	}
	if (seeds == SEEDS) /* a single seed may miss one */
		every_way_was_gone(&all, seeds);
	print_message("%d entries, %d refused, %d taken back, %d seeds, %.1f s\n",
		all.done, all.refused, undone, seeds,
		(double)(clock() - began) / CLOCKS_PER_SEC);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(forms_taken_back_leave_every_file_as_it_was),
	};

	return cmocka_run_group_tests(tests, NULL, NULL);
}
