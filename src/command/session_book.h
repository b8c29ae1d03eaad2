/* session_book.h - what the loop does for the pages that make and keep a book. */
#ifndef COMMAND_SESSION_BOOK_H
#define COMMAND_SESSION_BOOK_H

#include "answers/entry_forms.h"
#include "answers/entry_traps.h"
#include "session.h"

/* Opens the book, or one in memory when there is none yet. */
bool session_open_book(struct session *s, struct err *e);
/* Makes the book if it is not made yet. */
bool session_make_book(struct session *s, struct err *e);
/* After a book was made and nothing could be put into it. */
void session_unmake_book(struct session *s);
/* After a change of settings: the scout's initials as the book has them. */
void session_take_scout(struct session *s);

/* The Book page, the lists and what is done on them. */
bool session_read_book(struct session *s, struct err *e);
bool session_read_entries(struct session *s, struct err *e);
/* What a list or form of that family shows at its foot; NULL: nothing. */
const char *session_caution(enum entry_kind kind);
void session_entries(struct session *s, const struct wish *w);
void session_entry_farm(struct session *s, const struct wish *w);
void session_entry_pest(struct session *s, const struct wish *w);
void session_entry_all(struct session *s, const struct wish *w);
void session_retire(struct session *s, const struct wish *w);
void session_remove(struct session *s, const struct wish *w);
void session_move(struct session *s, const struct wish *w);
void session_hang(struct session *s, const struct wish *w);
void session_pull(struct session *s, const struct wish *w);
void session_replace(struct session *s, const struct wish *w);
/* After something was done at a trap: when nobody may enter its block now, the message
 * says so first. */
void session_tell_bar(struct session *s, int64_t trap);
void session_changes(struct session *s, const struct wish *w);
void session_undo_step(struct session *s, const struct wish *w);

/* The form; leaving any page. */
void session_leave(struct session *s, const struct wish *w);
bool session_read_form(struct session *s, struct err *e);
void session_form(struct session *s, const struct wish *w);
/* After every key: what a threshold in the form would have called. */
void session_try_form(struct session *s);
void session_form_field(struct session *s, const struct wish *w);
void session_put(struct session *s, const struct wish *w);
void session_put_block(struct session *s, const struct wish *w);
void session_theirs(struct session *s, const struct wish *w);

/* Beginning a book. */
bool session_is_empty(const struct session *s);
bool session_read_start(struct session *s, struct err *e);
void session_start(struct session *s, const struct wish *w);
void session_start_typing(struct session *s, const struct wish *w);
void session_start_file(struct session *s, const struct wish *w);
void session_start_demo(struct session *s, const struct wish *w);

/* "~/book.db" under HOME. */
void session_expand(const char *path, char *out, size_t size);

/* Merging. */
bool session_read_merge(struct session *s, struct err *e);
void session_merge_page(struct session *s, const struct wish *w);
void session_merge_look(struct session *s, const struct wish *w);
void session_merge(struct session *s, const struct wish *w);
void session_merge_undo(struct session *s, const struct wish *w);
void session_settle(struct session *s, const struct wish *w);

/* Backups. */
bool session_read_backups(struct session *s, struct err *e);
void session_backups(struct session *s, const struct wish *w);
void session_restore(struct session *s, const struct wish *w);

#endif
