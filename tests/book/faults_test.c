/* The disk fails at every call of what the book writes, in every way: the book opens
 * afterwards, is sound, and holds every change that was acknowledged and no half one.
 * FAULTS=all tries every call, FAULTS=6 each sixth, else a few of each are tried;
 * FAULTS_OF="a merge" tries that alone. */
#include "trials.h"

#include "book/backups.h"
#include "book/merge.h"
#include "book/steps.h"

enum { TODAY = 20014 };

static bool run_counts(struct trial *t, struct err *e)
{
	struct visit v = counted(t->trap, TODAY, 7), next = counted(t->other, TODAY, 0);
	struct visit_words w = { "JR", "half the card was wet" };
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	bool ok = b && book_save_visit(b, &v, NULL, e) && trial_ack(t);

	ok = ok && book_save_visit(b, &next, &w, e) && trial_ack(t);
	v.count = 17;
	ok = ok && book_save_visit(b, &v, &w, e) && trial_ack(t);
	book_close(b);
	return ok;
}

/* A trap with its farm, its block and its first visit, all or none. */
static bool put_form(struct book *b, struct trial *t, struct err *e)
{
	struct farm f = { .name = "Drumsorrel", .season_start = 101 };
	struct block k = { .name = "Weir rows", .area_x100 = -1 };
	struct trap p = { .pest = t->pest, .label = "7" };
	struct visit v = without_count(0, TODAY, OUTCOME_HUNG);

	if (!book_put_farm(b, &f, e))
		return false;
	k.farm = p.farm = f.id;
	if (!book_put_block(b, &k, e))
		return false;
	p.block = k.id;
	if (!book_put_trap(b, &p, e))
		return false;
	v.trap = p.id;
	return book_save_visit(b, &v, NULL, e);
}

static bool end_group(struct book *b, bool ok, struct err *e)
{
	if (ok)
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

static bool run_form(struct trial *t, struct err *e)
{
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	bool ok = b && book_begin(b, e) && end_group(b, put_form(b, t, e), e) &&
		  trial_ack(t);

	book_close(b);
	return ok;
}

/* As a file of visits comes in, with so little memory that half of it is written long
 * before it is whole. */
static bool add_rows(struct book *b, struct trial *t, struct err *e)
{
	struct visit_words w = { "JR", "" };
	struct visit v = counted(t->trap, 0, 3);
	bool same, ok = true;

	memset(w.note, 'n', 200);
	for (int i = 1; ok && i <= 600; i++) {
		v.trap = i % 2 ? t->trap : t->other;
		v.day = TODAY + i;
		v.count = i;
		ok = book_add_visit(b, &v, &w, &same, e);
	}
	return ok;
}

static bool run_import(struct trial *t, struct err *e)
{
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);

	if (b)
		raw(b, "PRAGMA cache_size = 10");
	bool ok = b && book_begin(b, e) && end_group(b, add_rows(b, t, e), e) &&
		  trial_ack(t);
	book_close(b);
	return ok;
}

static void make_merge(struct trial *t)
{
	char other[TRIAL_PATH];
	struct visit v = counted(t->trap, TODAY, 5), w = counted(t->other, TODAY, 6);
	struct book *b;

	snprintf(other, sizeof other, "%s/other.db", t->folder);
	must(b = book_open(t->path, BOOK_EXISTING, "JR", e));
	must(book_backup(b, other, e));
	must(book_save_visit(b, &v, NULL, e));
	book_close(b);
	must(b = book_open(other, BOOK_EXISTING, "Ida", e));
	v.count = 50;
	must(book_save_visit(b, &v, NULL, e));
	must(book_save_visit(b, &w, NULL, e));
	must(put_form(b, t, e));
	book_close(b);
}

static bool run_merge(struct trial *t, struct err *e)
{
	struct merge_report report = { 0 };
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	char other[TRIAL_PATH];

	snprintf(other, sizeof other, "%s/other.db", t->folder);
	bool ok = b && book_merge(b, other, &report, e) && trial_ack(t);
	book_merge_free(&report);
	book_close(b);
	return ok;
}

static void make_old(struct trial *t)
{
	sqlite3 *db;
	size_t n;
	char *sql = file_bytes("tests/book/v1.sql", &n);

	sql[n] = '\0';
	assert_int_equal(unlink(t->path), 0);
	assert_int_equal(sqlite3_open(t->path, &db), SQLITE_OK);
	assert_int_equal(sqlite3_exec(db, sql, NULL, NULL, NULL), SQLITE_OK);
	sqlite3_close(db);
	free(sql);
}

static bool run_upgrade(struct trial *t, struct err *e)
{
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	bool ok = b && trial_ack(t);

	book_close(b);
	return ok;
}

/* Older ones enough that some are to go. */
static void make_backups(struct trial *t)
{
	struct book *b;

	must(b = book_open(t->path, BOOK_EXISTING, "JR", e));
	for (int32_t day = TODAY - 90; day < TODAY; day += 7)
		must(book_daily_backup(b, day, e));
	book_close(b);
	make_old_part(t);
}

static bool run_backup(struct trial *t, struct err *e)
{
	struct visit v = counted(t->trap, TODAY, 7);
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	bool ok = b && book_daily_backup(b, TODAY, e) &&
		  book_save_visit(b, &v, NULL, e) && trial_ack(t);

	book_close(b);
	return ok;
}

static void make_restore(struct trial *t)
{
	char backup[TRIAL_PATH];
	struct visit v = counted(t->trap, TODAY, 7);
	struct book *b;

	snprintf(backup, sizeof backup, "%s/copy.db", t->folder);
	must(b = book_open(t->path, BOOK_EXISTING, "JR", e));
	must(book_backup(b, backup, e));
	must(book_save_visit(b, &v, NULL, e));
	book_close(b);
}

static bool run_restore(struct trial *t, struct err *e)
{
	char backup[TRIAL_PATH], kept[TRIAL_PATH];

	snprintf(backup, sizeof backup, "%s/copy.db", t->folder);
	return book_restore(t->path, backup, kept, sizeof kept, e) && trial_ack(t);
}

static void make_undo(struct trial *t)
{
	struct visit v = counted(t->trap, TODAY, 7);
	struct book *b;

	must(b = book_open(t->path, BOOK_EXISTING, "JR", e));
	must(book_save_visit(b, &v, NULL, e));
	v.count = 70;
	must(book_save_visit(b, &v, NULL, e));
	book_close(b);
}

static bool run_undo(struct trial *t, struct err *e)
{
	struct undone_step u;
	struct book *b = book_open(t->path, BOOK_EXISTING, "JR", e);
	bool ok = b && book_undo_step(b, NULL, 0, &u, e) && trial_ack(t);

	ok = ok && book_undo_step(b, NULL, 0, &u, e) && trial_ack(t);
	book_close(b);
	return ok;
}

static void make_nothing(struct trial *t)
{
	char folder[TRIAL_PATH];

	assert_int_equal(unlink(t->path), 0);
	snprintf(folder, sizeof folder, "%s/backups", t->folder);
	rmdir(folder);
}

static bool run_create(struct trial *t, struct err *e)
{
	struct book *b = book_open(t->path, BOOK_CREATE, "JR", e);
	bool ok = b && trial_ack(t);

	book_close(b);
	return ok;
}

static void book_survives_a_failing_disk_whatever_it_writes(void **state)
{
	static const struct act acts[] = {
		{ "three counts", NULL, run_counts, NULL },
		{ "a form", NULL, run_form, NULL },
		{ "an import", NULL, run_import, NULL },
		{ "a merge", make_merge, run_merge, NULL },
		{ "an upgrade", make_old, run_upgrade, NULL },
		{ "a daily backup", make_backups, run_backup, NULL },
		{ "a restore", make_restore, run_restore, NULL },
		{ "two undone", make_undo, run_undo, NULL },
		{ "a new book", make_nothing, run_create, NULL },
		{ "in new folders", make_nothing, run_create, "new/er/book.db" },
	};
	const char *alone = getenv("FAULTS_OF");
	long tried = 0, held = 0;

	(void)state;
	printf("%-16s %6s  %-17s %6s %6s\n", "", "calls", "", "tried", "held");
	for (size_t i = 0; i < sizeof acts / sizeof *acts; i++)
		if (!alone || strcmp(alone, acts[i].name) == 0)
			trial_act(&acts[i], &tried, &held);
	printf("%-16s %6s  %-17s %6ld %6ld\n", "all", "", "", tried, held);
	assert_true(tried > 0);
	assert_int_equal(held, tried);
}

int main(void)
{
	const struct CMUnitTest tests[] = {
		cmocka_unit_test(book_survives_a_failing_disk_whatever_it_writes),
	};
	return cmocka_run_group_tests(tests, NULL, NULL);
}
