/* disk.h - a disk that fails: takes the place of the C library's calls that make,
 * change, sync, name and remove files, for SQLite and for what the book does by itself.
 * A process arms it once, does its work and ends. */
#ifndef TESTS_FAULTY_DISK_H
#define TESTS_FAULTY_DISK_H

#include <stdbool.h>

enum disk_fault {
	DISK_SOUND, /* calls are counted only */
	/* The power is cut at the n-th call and the process ends with DISK_CUT. What
	 * was not synced by then is there, or is gone, or is there by the sector of 512
	 * bytes; names appear and go in order, so of those a last part is gone. */
	DISK_CUT_KEPT,
	DISK_CUT_LOST,
	DISK_CUT_TORN,
	/* From the n-th on nothing is written; half of the n-th is. There is no room on
	 * the disk, or by turns none for this user. */
	DISK_FULL,
	DISK_ERROR, /* the n-th fails, those after it do not */
	DISK_GONE,  /* the n-th fails and all after it */
	/* It lies about its space: from the n-th on what is written seems to be there,
	 * until the sync after it says that there was no room; then it is gone, as is
	 * at the end what was never synced. */
	DISK_LIES,
};
enum { DISK_CUT = 77 };

/* A synced name stands in a synced folder: a new one is lost with the power unless its
 * folder was synced after. `seed` picks the sectors. */
void disk_arm(enum disk_fault fault, long n, unsigned seed);
void disk_end(void);    /* of the work: what was to come comes now */
long disk_calls(void);  /* since it was armed */
bool disk_struck(void); /* it failed at least once */

#endif
