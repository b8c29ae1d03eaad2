/* folder.h - a folder of a test's own, below TMPDIR: tests/run-part sweeps there,
 * whatever becomes of the test. Without one, in memory where there is such a folder: a
 * disk takes long to sync. */
#ifndef TESTS_FOLDER_H
#define TESTS_FOLDER_H

#include <stdio.h>
#include <stdlib.h>
#include <sys/stat.h>

/* The path of a new folder called name-XXXXXX into out. */
static inline void folder_make(char *out, size_t size, const char *name)
{
	const char *below = getenv("TMPDIR");
	struct stat st;

	if (!below)
		below = stat("/dev/shm", &st) == 0 ? "/dev/shm" : "/tmp";
	int n = snprintf(out, size, "%s/%s-XXXXXX", below, name);
	assert_in_range(n, 1, size - 1);
	assert_non_null(mkdtemp(out));
}

#endif
