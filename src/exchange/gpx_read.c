/* The only file that sees expat. */
#include "gpx_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <errno.h>
#include <expat.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

enum { CHUNK_BYTES = 65536, DEGREE_CHARS_MAX = 40 };
enum { NAME_DEPTH = 3 }; /* open elements within a waypoint's name */

/* Elements of GPX 1.0 and 1.1 have such names: space, colon, name. */
static const char space[] = "http://www.topografix.com/GPX/1/";

struct reading {
	FILE *file;
	const struct spots_from *from;
	struct spots *points;
	struct imported *out;
	XML_Parser parser;
	int depth;        /* open elements */
	bool in_waypoint; /* a child of the root */
	bool in_name;     /* a child of that, the first that says something */
	bool is_too_long; /* the name, for any trap */
	char name[4 * NAME_BYTES];
	size_t n_name;
	struct err why; /* ERR_NONE: nothing stopped it but the parser itself */
};

static int64_t line_of(const struct reading *r)
{
	return (int64_t)XML_GetCurrentLineNumber(r->parser);
}

static void stop(struct reading *r, const char *why)
{
	err_set(&r->why, ERR_INPUT, _("%s, line %lld: %s"), r->from->name,
		(long long)line_of(r), why);
	XML_StopParser(r->parser, XML_FALSE);
}

/* The name within the space of GPX; NULL for elements of others, as in extensions. */
static const char *gpx_name(const char *element)
{
	if (strncmp(element, space, sizeof space - 1) != 0)
		return NULL;
	element = strchr(element, ' ');
	return element ? element + 1 : NULL;
}

/* A decimal number as XML Schema writes it; NAN for anything else. */
static double degrees(const char *text)
{
	const char *s = text + strspn(text, " \t\r\n");
	const char *from = s;
	size_t whole, part = 0;

	s += *s == '-' || *s == '+';
	whole = strspn(s, "0123456789");
	s += whole;
	if (*s == '.') {
		part = strspn(s + 1, "0123456789");
		s += 1 + part;
	}
	s += strspn(s, " \t\r\n");
	if (whole + part == 0 || *s || s - from > DEGREE_CHARS_MAX)
		return (double)NAN;
	return strtod(from, NULL) + 0.0; /* -0 is 0 */
}

static double attribute(const char **pairs, const char *name)
{
	for (size_t i = 0; pairs[i]; i += 2)
		if (strcmp(pairs[i], name) == 0)
			return degrees(pairs[i + 1]);
	return (double)NAN;
}

static void open_waypoint(struct reading *r, const char **pairs)
{
	struct spot w = { .lat = attribute(pairs, "lat"),
		.lon = attribute(pairs, "lon"),
		.at = line_of(r) };

	if (r->points->n == GPX_WAYPOINTS_MAX) {
		stop(r, _("there are more than 20 000 waypoints"));
		return;
	}
	if (!(fabs(w.lat) <= 90) || !(fabs(w.lon) <= 180))
		spots_problem(r->from, w.at, r->out,
			_("a waypoint needs lat from -90 to 90 and lon from -180 to "
			  "180"));
	r->in_waypoint = true;
	r->n_name = 0;
	r->is_too_long = false;
	r->points->items = mem_grow(r->points->items, &r->points->cap, r->points->n + 1,
		sizeof *r->points->items);
	r->points->items[r->points->n++] = w;
}

static void open_element(void *arg, const char *element, const char **pairs)
{
	struct reading *r = arg;
	const char *name = gpx_name(element);
	int depth = r->depth++;

	if (depth == 0 && (!name || strcmp(name, "gpx") != 0))
		stop(r, _("this is no GPX file: it does not begin with gpx of "
			  "topografix.com/GPX/1/1"));
	else if (depth == 1 && name && strcmp(name, "wpt") == 0)
		open_waypoint(r, pairs);
	else if (depth == 2 && r->in_waypoint && name && strcmp(name, "name") == 0)
		r->in_name = r->n_name == 0 && !r->is_too_long;
}

static void close_waypoint(struct reading *r)
{
	struct spot *w = &r->points->items[r->points->n - 1];

	r->in_waypoint = false;
	r->name[r->n_name] = '\0';
	text_trim(r->name);
	if (!r->is_too_long && strlen(r->name) < sizeof w->name)
		memcpy(w->name, r->name, strlen(r->name) + 1);
}

static void close_element(void *arg, const char *element)
{
	struct reading *r = arg;

	(void)element;
	r->depth--;
	if (r->depth == 2)
		r->in_name = false;
	if (r->depth == 1 && r->in_waypoint)
		close_waypoint(r);
}

/* Comes in pieces; a line break within a name counts as a blank. */
static void take_text(void *arg, const char *text, int n)
{
	struct reading *r = arg;

	if (!r->in_name || r->depth != NAME_DEPTH)
		return;
	for (int i = 0; i < n; i++) {
		char ch = text[i];

		if (r->n_name + 1 == sizeof r->name) {
			r->is_too_long = true;
			return;
		}
		r->name[r->n_name++] = ch == '\n' || ch == '\r' ? ' ' : ch;
	}
}

/* GPX has none. Without one there is no entity to expand and none from outside. */
static void refuse_doctype(void *arg, const char *name, const char *system,
	const char *public, int has_internal)
{
	(void)name;
	(void)system;
	(void)public;
	(void)has_internal;
	stop(arg, _("a document type stands there, which no GPX file has"));
}

static bool fail_to_read(const struct reading *r, struct err *e)
{
	return err_set(e, ERR_INPUT, _("%s cannot be read: %s"), r->from->name,
		strerror(errno));
}

static bool fail_to_parse(const struct reading *r, struct err *e)
{
	if (r->why.kind != ERR_NONE)
		return err_set(e, r->why.kind, "%s", r->why.text);
	return err_set(e, ERR_INPUT,
		_("%s, line %lld: this is not well-formed XML (%s), so it is no GPX "
		  "file"),
		r->from->name, (long long)line_of(r),
		XML_ErrorString(XML_GetErrorCode(r->parser)));
}

static bool parse(struct reading *r, struct err *e)
{
	char *chunk = mem_new(CHUNK_BYTES, 1);
	size_t n, all = 0;
	bool ok = true, is_last = false;

	while (ok && !is_last) {
		n = fread(chunk, 1, CHUNK_BYTES, r->file);
		is_last = n < CHUNK_BYTES;
		all += n;
		if (ferror(r->file))
			ok = fail_to_read(r, e);
		else if (all > GPX_BYTES_MAX)
			ok = err_set(e, ERR_INPUT,
				_("%s is longer than 64 MB: leave its tracks out"),
				r->from->name);
		else if (XML_Parse(r->parser, chunk, (int)n, is_last) != XML_STATUS_OK)
			ok = fail_to_parse(r, e);
	}
	free(chunk);
	return ok;
}

bool gpx_read(FILE *file, const struct spots_from *from, struct spots *points,
	struct imported *out, struct err *e)
{
	struct reading r = { .file = file,
		.from = from,
		.points = points,
		.out = out,
		.parser = XML_ParserCreateNS(NULL, ' ') };

	if (!r.parser)
		return err_set(e, ERR_BOOK, _("there is no memory left"));
	XML_SetUserData(r.parser, &r);
	XML_SetElementHandler(r.parser, open_element, close_element);
	XML_SetCharacterDataHandler(r.parser, take_text);
	XML_SetStartDoctypeDeclHandler(r.parser, refuse_doctype);
	bool ok = parse(&r, e);
	XML_ParserFree(r.parser);
	return ok;
}
