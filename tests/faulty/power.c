/* power.c - what a disk keeps when the power goes: all that was done since it was
 * synced is noted, so that it can be taken back. */
#include "power.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <unistd.h>

enum { SECTOR = 512, FILES = 256, PATHS = 512 };

struct step {
	enum done done;
	bool safe;
	int file;        /* of a write or a size: in `files` */
	off_t at, size;  /* where; the size of the file before */
	size_t n, n_old; /* bytes written, and how many of them stood there before */
	unsigned char *old;
	char path[PATHS], from[PATHS]; /* of a name */
	char aside[PATHS];             /* what the name stood for before; "" */
};

static struct {
	enum disk_fault fault;
	unsigned seed;
	struct step *steps;
	size_t n_steps, cap_steps;
	struct {
		dev_t device;
		ino_t inode;
		int fd; /* ours, never closed: closing it would drop SQLite's locks */
	} files[FILES];
	int n_files, n_aside;
} disk;

void power_set(enum disk_fault fault, unsigned seed)
{
	disk.fault = fault;
	disk.seed = seed;
}

bool power_may_go(void)
{
	return disk.fault >= DISK_CUT_KEPT && disk.fault <= DISK_CUT_TORN;
}

static _Noreturn void give_up(const char *why)
{
	fprintf(stderr, "the faulty disk itself: %s: %s\n", why, strerror(errno));
	_exit(99);
}

static struct step *add_step(enum done done)
{
	if (disk.n_steps == disk.cap_steps) {
		disk.cap_steps = disk.cap_steps * 2 + 64;
		disk.steps = realloc(disk.steps, disk.cap_steps * sizeof *disk.steps);
		if (!disk.steps)
			give_up("steps");
	}
	struct step *s = &disk.steps[disk.n_steps++];
	memset(s, 0, sizeof *s);
	s->done = done;
	return s;
}

static int file_of(const struct stat *st)
{
	for (int i = 0; i < disk.n_files; i++)
		if (disk.files[i].inode == st->st_ino &&
			disk.files[i].device == st->st_dev)
			return i;
	return -1;
}

static int known_file(int fd, const struct stat *st)
{
	int i = file_of(st);

	if (i >= 0)
		return i;
	if (disk.n_files == FILES)
		give_up("files");
	i = disk.n_files++;
	disk.files[i].inode = st->st_ino;
	disk.files[i].device = st->st_dev;
	disk.files[i].fd = fcntl(fd, F_DUPFD_CLOEXEC, 100);
	if (disk.files[i].fd < 0)
		give_up("a file");
	return i;
}

void power_note_bytes(int fd, enum done done, off_t at, size_t n)
{
	struct stat st;

	if (fstat(fd, &st) != 0)
		return;
	struct step *s = add_step(done);
	s->file = known_file(fd, &st);
	s->at = at;
	s->n = n;
	s->size = st.st_size;
	if (st.st_size <= at)
		return;
	size_t there = (size_t)(st.st_size - at);
	s->n_old = there < n ? there : n;
	s->old = malloc(s->n_old);
	if (!s->old || pread(fd, s->old, s->n_old, at) != (ssize_t)s->n_old)
		give_up("what stood there");
}

/* A second name keeps what a name stands for. */
static void put_aside(struct step *s)
{
	if (snprintf(s->aside, sizeof s->aside, "%.480s.aside-%d", s->path,
		    disk.n_aside++) < 0 ||
		syscall(SYS_linkat, AT_FDCWD, s->path, AT_FDCWD, s->aside, 0) != 0)
		s->aside[0] = '\0';
}

void power_note_name(enum done done, const char *path, const char *from)
{
	struct step *s = add_step(done);

	snprintf(s->path, sizeof s->path, "%s", path);
	snprintf(s->from, sizeof s->from, "%s", from);
	if (done == DONE_GONE || done == DONE_MOVED)
		put_aside(s);
}

void power_forget_last(void)
{
	disk.n_steps--;
}

static void bring_from_aside(const struct step *s)
{
	if (s->aside[0])
		syscall(SYS_renameat2, AT_FDCWD, s->aside, AT_FDCWD, s->path, 0);
}

static bool chance(void)
{
	return rand_r(&disk.seed) & 1;
}

/* The bytes of one write from `at` on, as they were. */
static void take_back_bytes(const struct step *s, size_t at, size_t n)
{
	static const unsigned char none[SECTOR];
	int fd = disk.files[s->file].fd;

	while (n > 0) {
		bool stood = at < s->n_old;
		size_t most = stood ? s->n_old - at : sizeof none;
		size_t some = n < most ? n : most;
		syscall(SYS_pwrite64, fd, stood ? s->old + at : none, some,
			s->at + (off_t)at);
		at += some;
		n -= some;
	}
}

static void take_back_size(const struct step *s, off_t size)
{
	syscall(SYS_ftruncate, disk.files[s->file].fd, size);
}

static void take_back_write(const struct step *s)
{
	take_back_bytes(s, 0, s->n);
	take_back_size(s, s->size);
}

static void take_back_cut(const struct step *s)
{
	take_back_bytes(s, 0, s->n_old);
	take_back_size(s, s->size);
}

bool power_lose_bytes(const struct stat *st)
{
	int file = st ? file_of(st) : 0;
	bool lost = false;

	for (size_t i = disk.n_steps; file >= 0 && i-- > 0;) {
		struct step *s = &disk.steps[i];

		if (s->safe || (st && s->file != file))
			continue;
		(s->done == DONE_WRITE ? take_back_write : take_back_cut)(s);
		s->safe = lost = true;
	}
	return lost;
}

/* Each sector as it was, or as it was to be. */
static void tear_write(const struct step *s)
{
	off_t end = s->size;

	for (size_t at = 0; at < s->n;) {
		size_t n = SECTOR - (size_t)(s->at + (off_t)at) % SECTOR;
		n = n < s->n - at ? n : s->n - at;
		if (chance())
			take_back_bytes(s, at, n);
		else if (s->at + (off_t)(at + n) > end)
			end = s->at + (off_t)(at + n);
		at += n;
	}
	if (s->at + (off_t)s->n > s->size)
		take_back_size(s, end);
}

static void take_back_name(const struct step *s)
{
	char gone[PATHS + 8];

	switch (s->done) {
	case DONE_FOLDER: /* with all that is in it */
		snprintf(gone, sizeof gone, "%s.gone", s->path);
		syscall(SYS_renameat2, AT_FDCWD, s->path, AT_FDCWD, gone, 0);
		break;
	case DONE_MOVED:
		syscall(SYS_renameat2, AT_FDCWD, s->path, AT_FDCWD, s->from, 0);
		bring_from_aside(s);
		break;
	case DONE_GONE:
		bring_from_aside(s);
		break;
	default:
		syscall(SYS_unlinkat, AT_FDCWD, s->path, 0);
	}
}

static void take_back(const struct step *s)
{
	if (s->done == DONE_WRITE && disk.fault == DISK_CUT_TORN)
		tear_write(s);
	else if (s->done == DONE_WRITE)
		take_back_write(s);
	else if (disk.fault == DISK_CUT_LOST || chance())
		take_back_cut(s);
}

void power_cut(void)
{
	size_t keep = disk.fault == DISK_CUT_TORN && disk.n_steps > 0
			      ? (size_t)rand_r(&disk.seed) % (disk.n_steps + 1)
			      : 0;

	for (size_t i = disk.n_steps; disk.fault != DISK_CUT_KEPT && i-- > 0;) {
		const struct step *s = &disk.steps[i];
		if (s->safe)
			continue;
		if (s->done == DONE_WRITE || s->done == DONE_SIZE)
			take_back(s);
		else if (i >= keep)
			take_back_name(s);
	}
	for (size_t i = 0; i < disk.n_steps; i++)
		if (disk.steps[i].aside[0])
			syscall(SYS_unlinkat, AT_FDCWD, disk.steps[i].aside, 0);
	_exit(DISK_CUT);
}

/* Does `path` stand in the folder of this device and inode? */
static bool stands_in(const char *path, const struct stat *folder)
{
	char above[PATHS];
	struct stat st;

	snprintf(above, sizeof above, "%s", path);
	char *slash = strrchr(above, '/');
	if (!slash)
		return false;
	*slash = '\0';
	return stat(above, &st) == 0 && st.st_ino == folder->st_ino &&
	       st.st_dev == folder->st_dev;
}

void power_synced(const struct stat *st)
{
	int file = S_ISDIR(st->st_mode) ? -1 : file_of(st);

	for (size_t i = 0; i < disk.n_steps; i++) {
		struct step *s = &disk.steps[i];
		bool bytes = s->done == DONE_WRITE || s->done == DONE_SIZE;
		if (bytes ? s->file == file
			  : S_ISDIR(st->st_mode) && stands_in(s->path, st))
			s->safe = true;
	}
}
