/* entry_away.c - records put away, brought back and taken out. */
#include "answers/entry_forms.h"

#include "base/words.h"
#include "book/book.h"
#include "entry_family.h"

bool entry_retire(struct book *b, enum entry_kind kind, int64_t id, bool retired,
	const struct log *l, struct err *e)
{
	const struct entry_family *f = &entry_families[kind];
	const struct family_ops *o = family_ops[kind];
	struct shelves s = { 0 };

	if (!o->retire)
		return err_set(e, ERR_INPUT,
			kind == ENTRY_TRAPS
				? _("a %s is not put away: pull it instead")
				: _("a %s is not put away: take it out instead"),
			_(f->one));
	if (!book_begin(b, e)) /* what is put back whole must be what stands there */
		return false;
	bool ok = shelves_read(&s, b, kind, l, e);
	size_t at = ok ? family_find(kind, &s, id) : SIZE_MAX;
	if (ok && at == SIZE_MAX)
		ok = err_set(e, ERR_NOT_FOUND, _("the %s is not in the book any more"),
			_(f->one));
	ok = ok && (o->retired(&s, at) == retired || o->retire(b, &s, at, retired, e));
	shelves_free(&s);
	if (ok)
		return book_commit(b, e);
	book_rollback(b);
	return false;
}

bool entry_remove(struct book *b, enum entry_kind kind, int64_t id, struct err *e)
{
	if (kind == ENTRY_SETTINGS)
		return err_set(e, ERR_INPUT,
			_("a setting stays; an empty one is the usual one"));
	return book_remove(b, family_ops[kind]->table, id, e);
}

bool entry_users(struct book *b, enum entry_kind kind, int64_t id, struct buf *out,
	struct err *e)
{
	return kind == ENTRY_SETTINGS ||
	       book_users(b, family_ops[kind]->table, id, out, e);
}
