/* power.h - inside tests/faulty: what was done and may not be on the disk yet. */
#ifndef TESTS_FAULTY_POWER_H
#define TESTS_FAULTY_POWER_H

#include "disk.h"

#include <sys/stat.h>
#include <sys/types.h>

enum done {
	DONE_WRITE,
	DONE_SIZE,
	DONE_MADE,
	DONE_FOLDER,
	DONE_GONE,
	DONE_LINK,
	DONE_MOVED,
};

void power_set(enum disk_fault fault, unsigned seed);
bool power_may_go(void); /* the fault is one of the cuts, so all must be noted */

/* Before a write of n bytes, or before a size that takes n bytes away. */
void power_note_bytes(int fd, enum done done, off_t at, size_t n);
/* Before a name goes or is moved (from: its old name), after one came. */
void power_note_name(enum done done, const char *path, const char *from);
void power_forget_last(void); /* what was noted last was not done after all */
/* A file or a folder was synced. */
void power_synced(const struct stat *st);

/* Takes back what was written to a file since it was synced, to all files with NULL;
 * false: nothing was. */
bool power_lose_bytes(const struct stat *st);

/* Leaves on the disk what the fault says and ends the process. */
_Noreturn void power_cut(void);

#endif
