/* hotspots.c - 12 blocks of an invented farm of 60 traps, each against the rest by 9999
 * shuffles, ten times over so that starting counts little, for tests/bench/run: by
 * src/season or by the plainest loop of the same shuffles. `hotspots ours` or
 * `hotspots plain`; prints how many shuffles were as high, the same either way. */
#include "season/hotspot.h"

#include <stdio.h>
#include <string.h>

enum { PASSES = 10, TRAPS = 60, BLOCKS = 12, SIZE = TRAPS / BLOCKS };

static struct hot_catch traps[TRAPS];

static void make_farm(void)
{
	struct dice d = { 20260721 };

	for (int i = 0; i < TRAPS; i++) {
		traps[i].moths = (int64_t)dice_below(&d, i < SIZE ? 40 : 12);
		traps[i].nights = 70 + (int64_t)dice_below(&d, 15);
	}
}

static int64_t ours(int block)
{
	bool in[TRAPS];

	for (int i = 0; i < TRAPS; i++)
		in[i] = i / SIZE == block;
	return hot_shuffle(traps, TRAPS, in, NULL, HOT_SEED).as_high;
}

/* Times all nights: what the traps caught above their share. */
static int64_t above(const int *set, int64_t moths, int64_t nights)
{
	int64_t y = 0, e = 0;

	for (int i = 0; i < SIZE; i++) {
		y += traps[set[i]].moths;
		e += traps[set[i]].nights;
	}
	return y * nights - e * moths;
}

static void shuffle(int *order, struct dice *d)
{
	for (int i = 0; i < TRAPS; i++)
		order[i] = i;
	for (int i = 0; i < SIZE; i++) {
		int j = i + (int)dice_below(d, (uint64_t)(TRAPS - i)), kept = order[i];
		order[i] = order[j];
		order[j] = kept;
	}
}

static int64_t plain(int block)
{
	struct dice d = { HOT_SEED };
	int64_t moths = 0, nights = 0, count = 0;
	int order[TRAPS];

	for (int i = 0; i < TRAPS; i++) {
		moths += traps[i].moths;
		nights += traps[i].nights;
	}
	for (int i = 0; i < SIZE; i++)
		order[i] = block * SIZE + i;
	int64_t observed = above(order, moths, nights);
	for (int k = 0; k < HOT_SHUFFLES; k++) {
		shuffle(order, &d);
		count += above(order, moths, nights) >= observed;
	}
	return count;
}

int main(int argc, char **argv)
{
	int64_t sum = 0;

	if (argc != 2 ||
		(strcmp(argv[1], "ours") != 0 && strcmp(argv[1], "plain") != 0))
		return fprintf(stderr, "usage: hotspots ours|plain\n"), 2;
	bool is_plain = strcmp(argv[1], "plain") == 0;
	make_farm();
	for (int k = 0; k < PASSES * BLOCKS; k++)
		sum += is_plain ? plain(k % BLOCKS) : ours(k % BLOCKS);
	return printf("%lld\n", (long long)sum) < 0;
}
