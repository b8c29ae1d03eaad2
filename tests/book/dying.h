/* dying.h - in the one file that includes it: the calls that make a change last,
 * counted, so that the process ends at the n-th of them. */
#ifndef TESTS_BOOK_DYING_H
#define TESTS_BOOK_DYING_H

#include <fcntl.h>
#include <sys/syscall.h>
#include <unistd.h>

static int calls, die_at;

static void tick(void)
{
	if (die_at && ++calls == die_at)
		_exit(77);
}

int fsync(int fd)
{
	tick();
	return (int)syscall(SYS_fsync, fd);
}

int fdatasync(int fd)
{
	tick();
	return (int)syscall(SYS_fdatasync, fd);
}

int link(const char *from, const char *to)
{
	tick();
	int code = (int)syscall(SYS_linkat, AT_FDCWD, from, AT_FDCWD, to, 0);
	tick();
	return code;
}

int unlink(const char *path)
{
	tick();
	return (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
}

#endif
