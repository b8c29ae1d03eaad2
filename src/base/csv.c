#include "base/csv.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <errno.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>

enum {
	READ_BYTES = 65536,
	/* A row and its line end lie in one piece, and there is always room to read. */
	BLOCK_BYTES = CSV_ROW_MAX_BYTES + READ_BYTES,
	SHOWN_BYTES = 40, /* of a wrong value in a message */
};

static const char byte_order_mark[] = "\xEF\xBB\xBF";

/* One row being taken apart. *end is a line feed, so that every scan ends there. */
struct scan {
	struct csv *c;
	struct err *e;
	char *p, *end;
	int64_t line;
	bool cut; /* the row goes on behind end: it is too long */
};

void csv_open(struct csv *c, FILE *file, const char *name)
{
	*c = (struct csv){ .file = file, .name = name, .next_line = 1 };
	c->block = mem_new(BLOCK_BYTES + 1, 1);
}

void csv_close(struct csv *c)
{
	free(c->block);
	*c = (struct csv){ 0 };
}

/* Moves the unread part to the front and reads on behind it. */
static bool fill(struct csv *c, struct err *e)
{
	c->filled -= c->at;
	memmove(c->block, c->block + c->at, c->filled);
	c->at = 0;
	errno = 0;
	c->filled += fread(c->block + c->filled, 1, BLOCK_BYTES - c->filled, c->file);
	if (ferror(c->file))
		return err_set(e, ERR_BOOK, _("%s, line %lld: cannot be read: %s"),
			c->name, (long long)c->next_line, strerror(errno));
	return true;
}

/* Bytes of the row from here to the next line, with its line end. False: read error. */
static bool find_row(struct csv *c, size_t *n, struct err *e)
{
	size_t seen = 0;
	bool quoted = false;

	for (;;) {
		const char *row = c->block + c->at;
		size_t have = c->filled - c->at;
		const char *lf =
			have > seen ? memchr(row + seen, '\n', have - seen) : NULL;
		size_t end = lf ? (size_t)(lf - row) + 1 : have;

		/* A line feed within quotes ends nothing; a quote that is doubled or
		 * stands wrong changes nothing for the parity of a good row. */
		for (const char *q = row + seen;
			(q = memchr(q, '"', (size_t)(row + end - q))); q++)
			quoted = !quoted;
		seen = *n = end;
		if ((lf && !quoted) || end > CSV_ROW_MAX_BYTES + 2)
			return true;
		if (lf)
			continue;
		if (feof(c->file))
			return true;
		if (!fill(c, e))
			return false;
	}
}

/* The wrong value from `from` on as it stands in the file, as far as it is worth
 * showing. */
static const char *shown(const struct scan *s, const char *from, char out[SHOWN_BYTES])
{
	char all[SHOWN_BYTES * 2];
	const char *stop = *from == '"' ? "\"\n\r" : ",\n\r";
	size_t n = 0;

	from += *from == '"';
	while (from + n < s->end && n < sizeof all - 1 && !strchr(stop, from[n]))
		n++;
	memcpy(all, from, n);
	all[n] = '\0';
	text_copy(out, SHOWN_BYTES, all);
	return out;
}

static char *bad(const struct scan *s, const char *fmt, ...)
	__attribute__((format(printf, 2, 3)));

/* Says where the scan stands, then what is wrong and what would be right. NULL. */
static char *bad(const struct scan *s, const char *fmt, ...)
{
	char what[256];
	va_list args;

	va_start(args, fmt);
	words_vprint(what, sizeof what, fmt, args);
	va_end(args);
	err_set(s->e, ERR_INPUT, _("%s, line %lld, column %d: %s"), s->c->name,
		(long long)s->line, (int)s->c->n_fields + 1, what);
	return NULL;
}

static char *bad_size(const struct scan *s)
{
	err_set(s->e, ERR_INPUT,
		_("%s, line %lld, column %d: the row is longer than %d bytes; each row "
		  "ends its line, and each quote is closed"),
		s->c->name, (long long)s->c->line, (int)s->c->n_fields + 1,
		CSV_ROW_MAX_BYTES);
	return NULL;
}

/* Steps over the character at s->p, which is none of the plain ones. */
static char *step(const struct scan *s, const char *from)
{
	char value[SHOWN_BYTES];
	uint32_t cp;
	size_t left = (size_t)(s->end - s->p), n = text_decode(s->p, left, &cp);
	bool torn = cp == 0xFFFD && n == 1;

	if (!torn && !text_control(cp))
		return s->p + n;
	if (torn && s->cut && left < 4)
		return bad_size(s);
	shown(s, from, value);
	if (torn)
		return bad(s,
			_("\"%s\" is not UTF-8 text (byte %d); save the file as CSV in "
			  "UTF-8"),
			value, (unsigned char)*s->p);
	if (cp == 0)
		return bad(s,
			_("a NUL byte stands after \"%s\"; a CSV file holds text only"),
			value);
	if (cp > 0xFF)
		return bad(s,
			_("\"%s\" holds the character U+%04X, which cannot be seen; "
			  "take it out"),
			value, (unsigned)cp);
	return bad(s,
		_("\"%s\" holds the control character %d; only text and tabs may stand "
		  "there"),
		value, (int)cp);
}

/* Characters that need no look: all of ASCII but controls, comma and quote. */
static inline bool is_plain(char ch)
{
	unsigned char u = (unsigned char)ch;

	return (u >= ' ' && u < 0x7F && u != ',' && u != '"') || u == '\t';
}

/* Takes "''=x" back to "'=x": one apostrophe goes, if a formula sign follows them. */
static void keep_field(struct csv *c, char *text, size_t n)
{
	struct csv_field *f = &c->field[c->n_fields++];

	*f = (struct csv_field){ .text = text, .n = n };
	if (*text != '\'')
		return;
	size_t marks = strspn(text, "'");
	if (marks < n && strchr("=+-@", text[marks])) {
		f->guarded = true;
		f->text++;
		f->n--;
	}
}

/* A field without quotes; leaves s->p on its comma or on the end. False: bad. */
static bool plain_field(struct scan *s)
{
	char *from = s->p, value[SHOWN_BYTES];

	for (;;) {
		while (is_plain(*s->p))
			s->p++;
		if (s->p == s->end || *s->p == ',')
			break;
		if (*s->p == '"')
			return bad(s,
				_("a quote stands inside \"%s\"; put the whole value "
				  "in quotes and write that quote twice"),
				shown(s, from, value));
		s->p = step(s, from);
		if (!s->p)
			return false;
	}
	size_t n = (size_t)(s->p - from);
	*s->p = '\0';
	keep_field(s->c, from, n);
	return true;
}

/* Finds the closing quote of the field at s->p; counts the doubled ones. NULL: bad. */
static char *close_quote(struct scan *s, size_t *doubled)
{
	const char *from = s->p++;
	char value[SHOWN_BYTES];
	int64_t opened = s->line;

	for (*doubled = 0;;) {
		while (is_plain(*s->p))
			s->p++;
		if (s->p == s->end)
			break;
		if (*s->p == '"') {
			if (s->p[1] != '"')
				return s->p;
			++*doubled;
			s->p += 2;
		} else if (strchr(",\r\n", *s->p) && *s->p) {
			s->line += *s->p++ == '\n';
		} else {
			s->p = step(s, from);
			if (!s->p)
				return NULL;
		}
	}
	if (s->cut)
		return bad_size(s);
	s->line = opened;
	return bad(s,
		_("the quote before \"%s\" is not closed; end the value with a quote"),
		shown(s, from, value));
}

static void undouble(char *text, size_t n)
{
	char *out = text;

	for (size_t i = 0; i < n; i++) {
		*out++ = text[i];
		i += text[i] == '"';
	}
	*out = '\0';
}

/* The same for a field in quotes. */
static bool quoted_field(struct scan *s)
{
	char *from = s->p + 1, value[SHOWN_BYTES];
	size_t doubled, n;
	char *closing = close_quote(s, &doubled);

	if (!closing)
		return false;
	s->p = closing + 1;
	if (s->p != s->end && *s->p != ',')
		return bad(s,
			_("\"%s\" stands behind a closing quote; write a quote inside "
			  "a value twice"),
			shown(s, s->p, value));
	n = (size_t)(closing - from) - doubled;
	*closing = '\0';
	if (doubled)
		undouble(from, (size_t)(closing - from));
	keep_field(s->c, from, n);
	return true;
}

/* Takes the row apart. False: bad. */
static bool split(struct scan *s)
{
	while (s->c->n_fields < CSV_FIELDS_MAX) {
		if (!(*s->p == '"' ? quoted_field(s) : plain_field(s)))
			return false;
		if (s->p == s->end && !s->cut)
			return true;
		if (s->p == s->end) {
			s->c->n_fields--; /* its end is not there */
			return bad_size(s);
		}
		s->p++;
	}
	return bad(s,
		_("more than %d columns; the comma parts them, and a comma inside a "
		  "value needs quotes around it"),
		CSV_FIELDS_MAX);
}

/* The row of n bytes without its line end; too long a row is cut at the limit. */
static struct scan scan_row(struct csv *c, size_t n, struct err *e)
{
	char *row = c->block + c->at;
	struct scan s = { .c = c, .e = e, .p = row, .line = c->next_line };

	if (n > 0 && row[n - 1] == '\n') {
		n--;
		if (n > 0 && row[n - 1] == '\r')
			n--;
	}
	s.cut = n > CSV_ROW_MAX_BYTES;
	s.end = row + (s.cut ? CSV_ROW_MAX_BYTES : n);
	*s.end = '\n';
	return s;
}

enum csv_got csv_next(struct csv *c, struct err *e)
{
	size_t n = 0;

	for (;;) {
		if (!find_row(c, &n, e))
			return CSV_BAD;
		if (n == 0)
			return CSV_END;
		struct scan s = scan_row(c, n, e);
		c->at += n;
		if (c->next_line == 1 && memcmp(s.p, byte_order_mark, 3) == 0)
			s.p += 3;
		c->line = c->next_line;
		c->n_fields = 0;
		if (s.p == s.end) {
			c->next_line++;
			continue;
		}
		bool good = split(&s);
		c->next_line = s.line + 1;
		return good ? CSV_ROW : CSV_BAD;
	}
}

/* A plain negative number is no formula to any spreadsheet. */
static bool is_number(const char *text)
{
	static const char digits[] = "0123456789";
	text += *text == '-';
	size_t whole = strspn(text, digits);
	const char *rest = text + whole;

	if (*rest == '.' && strspn(rest + 1, digits) > 0)
		rest += 1 + strspn(rest + 1, digits);
	return whole > 0 && *rest == '\0';
}

/* Quotes doubled. Line ends stay, since they are quoted; whatever else would steer a
 * terminal or is no UTF-8 becomes '?'. */
static void add_value(struct buf *out, const char *text)
{
	size_t n = strlen(text);

	buf_add(out, "");
	for (size_t at = 0, step; at < n; at += step) {
		uint32_t cp;

		step = text_decode(text + at, n - at, &cp);
		if (cp == '"')
			buf_add_n(out, "\"\"", 2);
		else if (cp != '\n' && cp != '\r' &&
			 (text_control(cp) || (cp == 0xFFFD && step == 1)))
			buf_add_n(out, "?", 1);
		else
			buf_add_n(out, text + at, step);
	}
}

void csv_add(struct buf *out, const char *text, bool first)
{
	const char *sign = text + strspn(text, "'");
	bool guard = *sign && strchr("=+-@", *sign) && !is_number(text);
	bool quote = strpbrk(text, ",\"\r\n") != NULL;

	if (!first)
		buf_add_n(out, ",", 1);
	if (quote)
		buf_add_n(out, "\"", 1);
	if (guard)
		buf_add_n(out, "'", 1);
	add_value(out, text);
	if (quote)
		buf_add_n(out, "\"", 1);
}

void csv_end_row(struct buf *out)
{
	/* A row of one empty field would read as an empty line, which is skipped. */
	if (out->n == 0 || out->text[out->n - 1] == '\n')
		buf_add(out, "\"\"");
	buf_add(out, "\r\n");
}
