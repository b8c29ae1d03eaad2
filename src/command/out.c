/* out.c - what commands write: to stdout, in the terminal's width, or to a file. */
#include "base/text.h"
#include "base/words.h"
#include "command/command.h"
#include "paper/ascii.h"

#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <string.h>
#include <sys/ioctl.h>
#include <sys/stat.h>
#include <unistd.h>

enum { COLS_USUAL = 80, COLS_LEAST = 40, COLS_MOST = 400 };

static bool write_all(int fd, const char *bytes, size_t n)
{
	while (n) {
		ssize_t wrote = write(fd, bytes, n);
		if (wrote < 0 && errno == EINTR)
			continue;
		if (wrote < 0)
			return false;
		bytes += wrote;
		n -= (size_t)wrote;
	}
	return true;
}

bool out_print(struct buf *text, struct err *e)
{
	bool ok = write_all(STDOUT_FILENO, text->text ? text->text : "", text->n);

	buf_clear(text);
	if (ok)
		return true;
	/* Whoever read it has seen enough: nothing to complain of. */
	if (errno == EPIPE)
		return err_set(e, ERR_BOOK, "%s", "");
	return err_set(
		e, ERR_BOOK, _("the output could not be written: %s"), strerror(errno));
}

bool out_text(struct buf *text, bool utf8, struct err *e)
{
	struct buf ascii = { 0 };

	if (utf8 || !text->text)
		return out_print(text, e);
	paper_ascii(text->text, &ascii);
	buf_clear(text);
	bool ok = out_print(&ascii, e);
	buf_free(&ascii);
	return ok;
}

void out_sentence(struct buf *out, const char *fmt, ...)
{
	char text[1024];
	va_list args;

	va_start(args, fmt);
	words_vprint(text, sizeof text, fmt, args);
	va_end(args);
	buf_add_field(out, text, text_cols(text));
	buf_add(out, "\n");
}

int out_cols(void)
{
	struct winsize size;

	if (!isatty(STDOUT_FILENO) || ioctl(STDOUT_FILENO, TIOCGWINSZ, &size) != 0 ||
		size.ws_col == 0)
		return COLS_USUAL;
	if (size.ws_col < COLS_LEAST)
		return COLS_LEAST;
	return size.ws_col > COLS_MOST ? COLS_MOST : size.ws_col;
}

static bool write_fault(const char *path, struct err *e)
{
	return err_set(
		e, ERR_BOOK, _("%s could not be written: %s"), path, strerror(errno));
}

/* Length of the path's folder with its slash, 0 when it has none. */
static size_t folder_bytes(const char *path)
{
	const char *slash = strrchr(path, '/');

	return slash ? (size_t)(slash - path) + 1 : 0;
}

/* A new file in the folder of `path`, whose name goes to *name; -1: see errno. */
static int open_beside(const char *path, struct buf *name)
{
	for (int i = 0; i < 100; i++) {
		buf_clear(name);
		buf_add_n(name, path, folder_bytes(path));
		buf_addf(name, ".mothtally-%ld-%d", (long)getpid(), i);
		int fd =
			open(name->text, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
		if (fd >= 0 || errno != EEXIST)
			return fd;
	}
	return -1;
}

/* Makes the new name last: a rename is on the disk when its folder is. */
static bool sync_folder(const char *path)
{
	struct buf folder = { 0 };

	buf_add_n(&folder, path, folder_bytes(path));
	int fd = open(folder.n ? folder.text : ".", O_RDONLY | O_DIRECTORY | O_CLOEXEC);
	bool ok = fd >= 0 && (fsync(fd) == 0 || errno == EINVAL);
	if (fd >= 0)
		close(fd);
	buf_free(&folder);
	return ok;
}

/* Gives the new file the mode of the one that it replaces. */
static bool fill(int fd, const struct buf *text, const struct stat *old)
{
	return (!old || fchmod(fd, old->st_mode & 0777) == 0) &&
	       write_all(fd, text->text ? text->text : "", text->n) && fsync(fd) == 0;
}

static bool replace(
	const char *path, const struct buf *text, const struct stat *old, struct err *e)
{
	struct buf name = { 0 };
	int fd = open_beside(path, &name);
	bool ok = fd >= 0 && fill(fd, text, old);

	if (fd >= 0 && close(fd) != 0)
		ok = false;
	ok = ok && rename(name.text, path) == 0;
	if (!ok)
		write_fault(path, e);
	if (!ok && fd >= 0)
		unlink(name.text);
	buf_free(&name);
	return ok && (sync_folder(path) || write_fault(path, e));
}

bool out_file(const char *path, const struct buf *text, struct err *e)
{
	struct stat old;

	if (lstat(path, &old) != 0)
		return errno == ENOENT && *path ? replace(path, text, NULL, e)
						: write_fault(path, e);
	if (!S_ISREG(old.st_mode))
		return err_set(e, ERR_BOOK,
			_("%s is %s; name a plain file or one that is not there yet"),
			path,
			S_ISDIR(old.st_mode)   ? _("a folder")
			: S_ISLNK(old.st_mode) ? _("a link")
					       : _("no plain file"));
	return replace(path, text, &old, e);
}

struct book *open_to_read(const struct context *ctx, struct err *e)
{
	struct book *b = book_open(ctx->book_path, BOOK_READ, ctx->who, e);

	if (!b && e && e->kind == ERR_NOT_FOUND)
		err_set(e, ERR_NOT_FOUND,
			_("there is no book at %s yet: begin one with mothtally, or "
			  "with mothtally import traps FILE"),
			ctx->book_path);
	return b;
}
