/* Takes GeoJSON apart. This and geojson_write.c alone see jansson. */
#include "geojson_parts.h"

#include "base/mem.h"
#include "base/text.h"
#include "base/words.h"

#include <errno.h>
#include <jansson.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

struct reading {
	FILE *file;
	const struct spots_from *from;
	struct features *features;
	struct imported *out;
	int64_t at; /* feature, 1.. */
	size_t n_bytes;
	bool is_too_long;
};

static size_t read_some(void *bytes, size_t most, void *arg)
{
	struct reading *r = arg;
	size_t n = fread(bytes, 1, most, r->file);

	r->n_bytes += n;
	r->is_too_long = r->n_bytes > GEOJSON_BYTES_MAX;
	return r->is_too_long || ferror(r->file) ? (size_t)-1 : n;
}

static json_t *load(struct reading *r, struct err *e)
{
	json_error_t why;
	json_t *root = json_load_callback(read_some, r, JSON_REJECT_DUPLICATES, &why);

	if (root)
		return root;
	if (r->is_too_long)
		err_set(e, ERR_INPUT,
			_("%s is longer than 16 MB: keep what is of the farm"),
			r->from->name);
	else if (ferror(r->file))
		err_set(e, ERR_INPUT, _("%s cannot be read: %s"), r->from->name,
			strerror(errno));
	else
		err_set(e, ERR_INPUT,
			_("%s, line %d: this is not well-formed JSON (%s), so it is no "
			  "GeoJSON file"),
			r->from->name, why.line, why.text);
	return NULL;
}

static const char *type_of(const json_t *object)
{
	const char *type = json_string_value(json_object_get(object, "type"));

	return type ? type : "";
}

static void warn(const struct reading *r, const char *what)
{
	spots_warn(r->from, r->at, r->out, what);
}

static void complain(const struct reading *r, const char *what)
{
	spots_problem(r->from, r->at, r->out, what);
}

/* Longitude, latitude and perhaps a height. */
static bool read_corner(const struct reading *r, const json_t *pair, struct corner *out)
{
	const json_t *lon = json_array_get(pair, 0), *lat = json_array_get(pair, 1);

	if (!json_is_number(lon) || !json_is_number(lat)) {
		complain(r,
			_("a position is a pair of numbers, longitude and latitude"));
		return false;
	}
	*out = (struct corner){ json_number_value(lat) + 0.0,
		json_number_value(lon) + 0.0 }; /* -0 is 0 */
	if (corner_good(*out))
		return true;
	complain(r,
		_("a position needs longitude from -180 to 180 and then latitude from "
		  "-90 to 90, in degrees"));
	return false;
}

static bool same_corner(const json_t *a, const json_t *b)
{
	return json_equal(json_array_get(a, 0), json_array_get(b, 0)) &&
	       json_equal(json_array_get(a, 1), json_array_get(b, 1));
}

/* A ring ends where it began; an outline does not repeat its first corner. */
static bool read_ring(const struct reading *r, const json_t *ring, struct feature *f)
{
	size_t n = json_array_size(ring);
	struct buf what = { 0 };

	if (n > 1 && same_corner(json_array_get(ring, 0), json_array_get(ring, n - 1)))
		n--;
	if (n < OUTLINE_MIN || n > OUTLINE_MAX) {
		buf_addf(&what, _("an outline has %d to %d corners, this one has %zu"),
			OUTLINE_MIN, OUTLINE_MAX, n);
		complain(r, what.text);
		buf_free(&what);
		return false;
	}
	for (size_t i = 0; i < n; i++)
		if (!read_corner(r, json_array_get(ring, i), &f->outline[i]))
			return false;
	f->n_outline = n;
	return true;
}

static bool read_polygon(
	const struct reading *r, const json_t *rings, struct feature *f)
{
	f->shape = SHAPE_OUTLINE;
	if (!read_ring(r, json_array_get(rings, 0), f))
		return false;
	if (json_array_size(rings) > 1)
		warn(r, _("the holes of its outline were left out"));
	return true;
}

static bool read_point(const struct reading *r, const json_t *pair, struct feature *f)
{
	struct corner at;

	if (!read_corner(r, pair, &at))
		return false;
	f->shape = SHAPE_POINT;
	f->spot.lat = at.lat;
	f->spot.lon = at.lon;
	return true;
}

/* False: it has no shape that a trap or a source has, which was said. */
static bool read_shape(
	const struct reading *r, const json_t *geometry, struct feature *f)
{
	const json_t *where = json_object_get(geometry, "coordinates");
	const char *type = type_of(geometry);
	struct buf what = { 0 };

	if (strcmp(type, "Point") == 0)
		return read_point(r, where, f);
	if (strcmp(type, "Polygon") == 0)
		return read_polygon(r, where, f);
	if (strcmp(type, "MultiPolygon") == 0 && json_array_size(where) == 1)
		return read_polygon(r, json_array_get(where, 0), f);
	if (*type)
		buf_addf(&what,
			_("a %s is neither a point nor one outline; it was passed over"),
			type);
	else
		buf_add(&what, _("it has no place on the ground; it was passed over"));
	warn(r, what.text);
	buf_free(&what);
	return false;
}

/* A text, or a whole number as digits: traps are often called 1, 2, 3. */
static void read_text(const json_t *properties, const char *name, char out[NAME_BYTES])
{
	const json_t *value = json_object_get(properties, name);
	char text[4 * NAME_BYTES] = "";

	*out = '\0';
	if (json_is_integer(value))
		snprintf(text, sizeof text, "%" JSON_INTEGER_FORMAT,
			json_integer_value(value));
	else if (json_is_string(value) && json_string_length(value) < sizeof text)
		text_copy(text, sizeof text, json_string_value(value));
	text_trim(text);
	if (strlen(text) < NAME_BYTES)
		text_copy(out, NAME_BYTES, text);
}

static void read_properties(const json_t *properties, struct feature *f)
{
	static const char *const names[] = { "name", "Name", "label" };
	char word[NAME_BYTES];

	for (size_t i = 0; !*f->spot.name && i < sizeof names / sizeof *names; i++)
		read_text(properties, names[i], f->spot.name);
	read_text(properties, "farm", f->farm);
	read_text(properties, "kind", word);
	f->has_kind = source_kind_read(word, &f->kind);
	read_text(properties, "what", word);
	f->is_trap = strcmp(word, "trap") == 0;
	f->is_source = !f->is_trap && (f->has_kind || strcmp(word, "source") == 0);
}

static void take(struct reading *r, const json_t *object)
{
	struct features *all = r->features;
	struct feature f = { .spot = { .at = ++r->at } };

	if (strcmp(type_of(object), "Feature") != 0) {
		complain(r, _("this is no Feature"));
		return;
	}
	read_properties(json_object_get(object, "properties"), &f);
	if (!read_shape(r, json_object_get(object, "geometry"), &f))
		return;
	all->items = mem_grow(all->items, &all->cap, all->n + 1, sizeof *all->items);
	all->items[all->n++] = f;
}

/* RFC 7946 knows one system; older files may name another. */
static bool has_our_system(const struct reading *r, const json_t *root, struct err *e)
{
	const json_t *crs = json_object_get(root, "crs");
	const char *name = json_string_value(
		json_object_get(json_object_get(crs, "properties"), "name"));

	if (!crs || json_is_null(crs) ||
		(name && (strstr(name, "CRS84") || strstr(name, "4326"))))
		return true;
	return err_set(e, ERR_INPUT,
		_("the positions of %s are in another system (%s); save it as longitude "
		  "and latitude, WGS 84"),
		r->from->name, name ? name : "crs");
}

static bool take_all(struct reading *r, const json_t *root, struct err *e)
{
	const json_t *list = json_object_get(root, "features");

	if (strcmp(type_of(root), "Feature") == 0) {
		take(r, root);
		return true;
	}
	if (strcmp(type_of(root), "FeatureCollection") != 0 || !json_is_array(list))
		return err_set(e, ERR_INPUT,
			_("%s is no GeoJSON file of features: it does not begin with a "
			  "FeatureCollection"),
			r->from->name);
	if (json_array_size(list) > GEOJSON_FEATURES_MAX)
		return err_set(e, ERR_INPUT, _("%s has more than 20 000 features"),
			r->from->name);
	for (size_t i = 0; i < json_array_size(list); i++)
		take(r, json_array_get(list, i));
	return true;
}

bool geojson_read(FILE *file, const struct spots_from *from, struct features *features,
	struct imported *out, struct err *e)
{
	struct reading r = {
		.file = file, .from = from, .features = features, .out = out
	};
	json_t *root = load(&r, e);
	bool ok = root && has_our_system(&r, root, e) && take_all(&r, root, e);

	json_decref(root);
	return ok;
}
