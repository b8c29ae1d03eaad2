/* save.c - counts saved, beside something else that reaches the disk, by turns, for
 * tests/bench/run: `save BATCHES OURS BESIDE`. A side that ends in .db is a book with
 * traps, into which a batch of counts goes, one transaction each; any other is a file,
 * to which as many blocks of 4 KiB are added, each written and synced. Prints a line a
 * batch: microseconds a count on either side. */
#include "base/day.h"
#include "book/diary.h"
#include "book/places.h"

#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>
#include <unistd.h>

enum { BATCH = 20, BLOCK_BYTES = 4096, FIRST_YEAR = 2150 };

struct side {
	struct book *book; /* NULL: a file */
	struct traps traps;
	int file;
	int32_t day; /* of the latest count: no trap has another */
};

static double now_us(void)
{
	struct timespec t;

	clock_gettime(CLOCK_MONOTONIC, &t);
	return (double)t.tv_sec * 1e6 + (double)t.tv_nsec / 1e3;
}

static _Noreturn void give_up(const char *why)
{
	fprintf(stderr, "save: %s\n", why);
	exit(1);
}

static void side_open(struct side *s, const char *path)
{
	size_t n = strlen(path);
	struct err e = { 0 };

	*s = (struct side){ .file = -1, .day = day_from_ymd(FIRST_YEAR, 1, 1) };
	if (n < 3 || strcmp(path + n - 3, ".db") != 0) {
		s->file = open(path, O_WRONLY | O_CREAT | O_TRUNC, 0600);
		if (s->file < 0)
			give_up(path);
		return;
	}
	s->book = book_open(path, BOOK_EXISTING, "AB", &e);
	if (!s->book || !book_traps(s->book, 0, &s->traps, &e))
		give_up(e.text);
	if (s->traps.n == 0)
		give_up("the book has no traps");
}

static void save_count(struct side *s, size_t i)
{
	struct visit v = { .trap = s->traps.items[i % s->traps.n].id,
		.day = s->day,
		.outcome = OUTCOME_COUNTED,
		.count = (int32_t)(i % 12),
		.females = COUNT_NONE,
		.others = COUNT_NONE };
	struct err e = { 0 };

	if (!book_save_visit(s->book, &v, NULL, &e))
		give_up(e.text);
	if ((i + 1) % s->traps.n == 0)
		s->day++;
}

static void write_block(const struct side *s)
{
	static const char block[BLOCK_BYTES];

	if (write(s->file, block, sizeof block) != BLOCK_BYTES ||
		fdatasync(s->file) != 0)
		give_up("the file is not written");
}

/* Microseconds for each of a batch. */
static double batch(struct side *s)
{
	double from = now_us();

	for (size_t i = 0; i < BATCH; i++) {
		if (s->book)
			save_count(s, i);
		else
			write_block(s);
	}
	s->day++;
	return (now_us() - from) / BATCH;
}

static void side_close(struct side *s)
{
	if (s->book)
		book_close(s->book);
	else
		close(s->file);
	free(s->traps.items);
}

int main(int argc, char **argv)
{
	struct side ours, beside;

	if (argc != 4)
		return fprintf(stderr, "usage: save BATCHES OURS BESIDE\n"), 2;
	side_open(&ours, argv[2]);
	side_open(&beside, argv[3]);
	batch(&ours); /* the first of a day is backed up, and fills the caches */
	batch(&beside);
	for (int n = atoi(argv[1]); n > 0; n--) {
		double us = batch(&ours), beside_us = batch(&beside);
		printf("%.1f %.1f\n", us, beside_us);
	}
	side_close(&ours);
	side_close(&beside);
	return 0;
}
