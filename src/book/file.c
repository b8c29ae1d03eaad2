/* file.c - files that appear whole or not at all, readable by their owner only. */
#include "file.h"

#include "store.h"

#include "base/words.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

bool file_means_full(int system)
{
	return system == ENOSPC || system == EDQUOT || system == EFBIG;
}

bool file_same(const char *a, const char *b)
{
	struct stat x, y;

	return stat(a, &x) == 0 && stat(b, &y) == 0 && x.st_dev == y.st_dev &&
	       x.st_ino == y.st_ino;
}

static bool fail(const char *what, const char *path, struct err *e)
{
	const char *why =
		file_means_full(errno) ? _("the disk is full") : strerror(errno);

	return err_set(e, ERR_BOOK, "%s: %s (%s)", _(what), why, path);
}

static bool sync_path(const char *path, int flags)
{
	int fd = open(path, flags | O_RDONLY | O_CLOEXEC);
	bool ok = fd >= 0 && fsync(fd) == 0;

	if (fd >= 0)
		close(fd);
	return ok;
}

static bool sync_folder_of(const char *path)
{
	char folder[STORE_PATH_BYTES];

	snprintf(folder, sizeof folder, "%s", path);
	char *slash = strrchr(folder, '/');
	if (!slash)
		return sync_path(".", O_DIRECTORY);
	slash[slash == folder] = '\0';
	return sync_path(folder, O_DIRECTORY);
}

/* Its mode whatever the umask took away, its name on the disk as far as that goes. */
static void settle_folder(const char *folder)
{
	chmod(folder, 0700);
	sync_folder_of(folder);
}

bool file_folders(const char *path, const char *what, struct err *e)
{
	char folder[STORE_PATH_BYTES];

	if (snprintf(folder, sizeof folder, "%s", path) >= (int)sizeof folder)
		return err_set(e, ERR_BOOK, _("%s: its path is too long"), _(what));
	for (char *s = strchr(folder + 1, '/'); s; s = strchr(s + 1, '/')) {
		*s = '\0';
		if (mkdir(folder, 0700) == 0)
			settle_folder(folder);
		else if (errno != EEXIST)
			return fail(what, folder, e);
		*s = '/';
	}
	return true;
}

bool file_part(
	const char *target, char *part, size_t size, const char *what, struct err *e)
{
	int n = snprintf(part, size, "%s.part-XXXXXX", target);

	if (n >= (int)size)
		return err_set(e, ERR_BOOK, _("%s: its path is too long"), _(what));
	int fd = mkstemp(part);
	if (fd < 0)
		return fail(what, target, e);
	bool ok = fchmod(fd, 0600) == 0 || fail(what, part, e);
	close(fd);
	if (!ok)
		unlink(part);
	return ok;
}

/* Gives the file its name without ever replacing one. Where the disk knows no links
 * (a stick with FAT) a look before the rename must do. */
static bool name_file(const char *part, const char *target)
{
	struct stat st;

	if (link(part, target) == 0)
		return unlink(part) == 0;
	if (errno == EEXIST)
		return false;
	if (lstat(target, &st) == 0) {
		errno = EEXIST;
		return false;
	}
	return rename(part, target) == 0;
}

bool file_publish(const char *part, const char *target, bool *taken, const char *what,
	struct err *e)
{
	*taken = false;
	if (sync_path(part, 0) && name_file(part, target) && sync_folder_of(target))
		return true;
	*taken = errno == EEXIST;
	return fail(what, target, e);
}

bool file_replace(const char *part, const char *target, const char *what, struct err *e)
{
	return (sync_path(part, 0) && rename(part, target) == 0 &&
		       sync_folder_of(target)) ||
	       fail(what, target, e);
}
