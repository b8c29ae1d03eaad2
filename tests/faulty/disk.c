/* disk.c - the calls themselves, each done by the kernel's own unless it is to fail. */
#undef _FORTIFY_SOURCE /* it has bodies of its own for some of them */
#define _LARGEFILE64_SOURCE
#include "power.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static struct {
	enum disk_fault fault;
	long n, calls;
	bool struck;
} disk;

void disk_arm(enum disk_fault fault, long n, unsigned seed)
{
	power_set(fault, seed);
	disk.fault = fault;
	disk.n = n;
	disk.calls = 0;
	disk.struck = false;
}

void disk_end(void)
{
	if (power_may_go())
		power_cut();
	if (disk.fault == DISK_LIES)
		power_lose_bytes(NULL);
}

long disk_calls(void)
{
	return disk.calls;
}

bool disk_struck(void)
{
	return disk.struck;
}

enum call { CALL_WRITE, CALL_NAME, CALL_OTHER };

/* Counts one call; true: it is to fail, with errno set. */
static bool fails(enum call call)
{
	disk.calls++;
	bool now = disk.calls == disk.n, past = disk.calls >= disk.n;
	bool fail = (disk.fault == DISK_ERROR && now) ||
		    (disk.fault == DISK_GONE && past) ||
		    (disk.fault == DISK_FULL && past && call != CALL_OTHER);

	if (fail) {
		disk.struck = true;
		errno = disk.fault != DISK_FULL ? EIO : disk.n % 2 ? ENOSPC : EDQUOT;
	}
	return fail;
}

/* Bytes that may be taken back. */
static bool notes_bytes(void)
{
	return power_may_go() || (disk.fault == DISK_LIES && disk.calls >= disk.n);
}

/* After a call that was done: the power may go. */
static void may_cut(void)
{
	if (power_may_go() && disk.calls == disk.n)
		power_cut();
}

static bool is_counted(int fd)
{
	struct stat st;

	return disk.n > 0 && fd > STDERR_FILENO && fstat(fd, &st) == 0 &&
	       S_ISREG(st.st_mode);
}

static ssize_t write_at(int fd, const void *bytes, size_t n, off_t at)
{
	bool first = disk.calls + 1 == disk.n;

	if (!is_counted(fd))
		return syscall(SYS_pwrite64, fd, bytes, n, at);
	if (fails(CALL_WRITE))
		return disk.fault == DISK_FULL && first && n > 1
			       ? syscall(SYS_pwrite64, fd, bytes, n / 2, at)
			       : -1;
	if (notes_bytes())
		power_note_bytes(fd, DONE_WRITE, at, n);
	ssize_t wrote = syscall(SYS_pwrite64, fd, bytes, n, at);
	may_cut();
	return wrote;
}

ssize_t pwrite(int fd, const void *bytes, size_t n, off_t at)
{
	return write_at(fd, bytes, n, at);
}

ssize_t pwrite64(int fd, const void *bytes, size_t n, off_t at)
{
	return write_at(fd, bytes, n, at);
}

static int set_size(int fd, off_t size)
{
	struct stat st;

	if (!is_counted(fd) || fstat(fd, &st) != 0)
		return (int)syscall(SYS_ftruncate, fd, size);
	if (fails(CALL_OTHER))
		return -1;
	if (notes_bytes())
		power_note_bytes(fd, DONE_SIZE, size,
			st.st_size > size ? (size_t)(st.st_size - size) : 0);
	int code = (int)syscall(SYS_ftruncate, fd, size);
	may_cut();
	return code;
}

int ftruncate(int fd, off_t size)
{
	return set_size(fd, size);
}

int ftruncate64(int fd, off_t size)
{
	return set_size(fd, size);
}

/* The power goes before what it was to sync is. */
static int sync_file(int fd)
{
	struct stat st;

	if (disk.n <= 0)
		return (int)syscall(SYS_fsync, fd);
	if (fails(CALL_OTHER))
		return -1;
	may_cut();
	if (fstat(fd, &st) != 0)
		return 0;
	if (disk.fault == DISK_LIES && power_lose_bytes(&st)) {
		disk.struck = true;
		errno = ENOSPC;
		return -1;
	}
	if (power_may_go())
		power_synced(&st);
	return 0;
}

int fsync(int fd)
{
	return sync_file(fd);
}

int fdatasync(int fd)
{
	return sync_file(fd);
}

static int open_file(const char *path, int flags, mode_t mode)
{
	struct stat st;
	bool makes = disk.n > 0 && (flags & O_CREAT) && lstat(path, &st) != 0;

	if (makes && fails(CALL_NAME))
		return -1;
	int fd = (int)syscall(SYS_openat, AT_FDCWD, path, flags, mode);
	if (!makes || fd < 0)
		return fd;
	if (power_may_go())
		power_note_name(DONE_MADE, path, "");
	may_cut();
	return fd;
}

static mode_t mode_given(int flags, va_list args)
{
	return flags & O_CREAT ? va_arg(args, mode_t) : 0;
}

int open(const char *path, int flags, ...)
{
	va_list args;

	va_start(args, flags);
	mode_t mode = mode_given(flags, args);
	va_end(args);
	return open_file(path, flags, mode);
}

int open64(const char *path, int flags, ...)
{
	va_list args;

	va_start(args, flags);
	mode_t mode = mode_given(flags, args);
	va_end(args);
	return open_file(path, flags, mode);
}

int mkstemp(char *pattern)
{
	static unsigned turn;
	size_t n = strlen(pattern);

	for (int tries = 0; tries < 100; tries++) {
		char six[8];
		snprintf(six, sizeof six, "%06u",
			((unsigned)getpid() * 100u + turn++) % 1000000u);
		memcpy(pattern + n - 6, six, 6);
		int fd = open_file(pattern, O_RDWR | O_CREAT | O_EXCL, 0600);
		if (fd >= 0 || errno != EEXIST)
			return fd;
	}
	return -1;
}

int mkdir(const char *path, mode_t mode)
{
	struct stat st;

	if (disk.n <= 0 || lstat(path, &st) == 0)
		return (int)syscall(SYS_mkdirat, AT_FDCWD, path, mode);
	if (fails(CALL_NAME))
		return -1;
	int code = (int)syscall(SYS_mkdirat, AT_FDCWD, path, mode);
	if (code == 0 && power_may_go())
		power_note_name(DONE_FOLDER, path, "");
	may_cut();
	return code;
}

int unlink(const char *path)
{
	struct stat st;

	if (disk.n <= 0 || lstat(path, &st) != 0)
		return (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
	if (fails(CALL_OTHER))
		return -1;
	if (power_may_go())
		power_note_name(DONE_GONE, path, "");
	int code = (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
	if (code != 0 && power_may_go())
		power_forget_last();
	may_cut();
	return code;
}

int link(const char *from, const char *to)
{
	if (disk.n > 0 && fails(CALL_NAME))
		return -1;
	int code = (int)syscall(SYS_linkat, AT_FDCWD, from, AT_FDCWD, to, 0);
	if (code == 0 && disk.n > 0 && power_may_go())
		power_note_name(DONE_LINK, to, "");
	if (disk.n > 0)
		may_cut();
	return code;
}

int rename(const char *from, const char *to)
{
	struct stat st;

	if (disk.n <= 0 || lstat(from, &st) != 0)
		return (int)syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
	if (fails(CALL_OTHER))
		return -1;
	if (power_may_go())
		power_note_name(DONE_MOVED, to, from);
	int code = (int)syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
	if (code != 0 && power_may_go())
		power_forget_last();
	may_cut();
	return code;
}
