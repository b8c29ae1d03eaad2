/* backed_up.h - a book and a backup that is a visit behind it. */
#ifndef TESTS_BOOK_BACKED_UP_H
#define TESTS_BOOK_BACKED_UP_H

#include "fixture.h"

#include "book/backups.h"

enum { THEN = 20000, NOW = 20007 };

/* A backup with a visit THEN, and a book with another NOW, closed. */
static inline void backed_up(struct desk *d, char *backup, size_t size)
{
	desk_disk(d);
	snprintf(backup, size, "%s/backups/book-2024-10-04.db", d->folder);
	struct visit then = counted(d->trap, THEN, 3), now = counted(d->trap, NOW, 9);
	must(book_save_visit(d->book, &then, NULL, e));
	must(book_daily_backup(d->book, THEN, e));
	must(book_save_visit(d->book, &now, NULL, e));
	book_close(d->book);
	d->book = NULL;
}

static inline int64_t visits_at(const char *path)
{
	struct book_contents in;

	must(book_look_into(path, &in, e));
	return in.visits;
}

static inline void tell_nobody(void *arg, const char *text)
{
	(void)arg;
	(void)text;
}

static inline int files(const char *folder, const char *words)
{
	struct dirent *entry;
	DIR *dir = opendir(folder);
	int n = 0;

	assert_non_null(dir);
	while ((entry = readdir(dir)))
		n += strstr(entry->d_name, words) != NULL;
	closedir(dir);
	return n;
}

#endif
