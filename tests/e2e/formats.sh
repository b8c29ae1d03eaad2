#!/bin/sh
# The open formats beside CSV: files that other general tools made go in, ours go through
# readers that are not ours. tests/e2e/elsewhere holds what ogr2ogr (GDAL 3.6.2) and
# gpsbabel (1.8.0) made of three traps and two sources of the demo.
. tests/e2e/lib.sh

day=2026-07-21
book="$work/book.db"

it() {
	"$prog" --book "$book" --today $day "$@"
}

new_book() {
	rm -f "$book"
	cut -d, -f1-11 share/demo/traps.csv >"$work/traps.csv" # no positions yet
	it import traps "$work/traps.csv" >"$work/out"
}

head -n 1 share/demo/traps.csv | cut -d, -f1-11 >"$work/head"
check "the demo's traps begin without their positions" \
	grep -qv -e lat -e lon "$work/head"

for file in ogr2ogr.gpx gpsbabel.gpx ogr2ogr.geojson gpsbabel.geojson; do
	new_book
	it import "${file#*.}" "$here/elsewhere/$file" --farm Addermoor >"$work/out"
	check "$file sets three positions" grep -q 'positions set: 3,' "$work/out"
	check "$file goes in once" sh -c "'$prog' --book '$book' --today $day \
		import ${file#*.} '$here/elsewhere/$file' --farm Addermoor |
		grep -q 'positions set: 0, there already: [35]'"
	it export traps | grep -c ',41.20[0-9]*,165.20[0-9]*,' >"$work/n"
	check "and stand in the book" [ "$(cat "$work/n")" -eq 3 ]
done
new_book
it import geojson "$here/elsewhere/ogr2ogr.geojson" --farm Addermoor >"$work/out"
check "an outline and a point of a kind are sources" grep -q 'new sources: 2' "$work/out"
check "positions in metres are refused" sh -c "! '$prog' --book '$book' --today $day \
	import geojson '$here/elsewhere/ogr2ogr-metres.geojson' --farm Addermoor 2>'$work/err'"
check "and it is said what would be right" grep -q 'longitude and latitude, WGS 84' \
	"$work/err"

# A book with all there is.
rm -f "$book"
for kind in traps places visits dispensers treatments picks; do
	it import $kind share/demo/$kind.csv >>"$work/out"
done
it export geojson "$work/map.geojson"
it export gpx "$work/way.gpx" --farm Addermoor
it export icalendar "$work/ahead.ics"
check "the same calendar again" sh -c "'$prog' --book '$book' --today $day \
	export icalendar --farm Addermoor | grep -q 'Trap run: Addermoor'"
check "a calendar cannot be taken in" sh -c "! '$prog' --book '$book' \
	import icalendar '$work/ahead.ics' 2>/dev/null"

python=
for one in /usr/bin/python3 python3; do
	if $one -c 'import icalendar, geojson, gpxpy' 2>/dev/null; then
		python=$one
		break
	fi
done
if [ ! "$python" ]; then
	echo "left out: readers that are not ours (python3 with icalendar, geojson, gpxpy)"
	finish
fi

cat >"$work/map.py" <<'END'
import geojson, sys
map = geojson.load(open(sys.argv[1]))
assert map.is_valid and all(f.is_valid for f in map.features)
kinds = [(f.properties["what"], f.geometry.type) for f in map.features]
assert kinds.count(("trap", "Point")) == 45, kinds
assert kinds.count(("source", "Polygon")) == 1 and kinds.count(("source", "Point")) == 2
END
cat >"$work/way.py" <<'END'
import gpxpy, sys
way = gpxpy.parse(open(sys.argv[1]))
assert way.version == "1.1" and len(way.waypoints) == 20
assert [w.name for w in way.waypoints][:3] == ["1", "2", "3"]
assert abs(way.waypoints[0].latitude - 41.20572) < 1e-6
END
cat >"$work/ahead.py" <<'END'
import datetime, icalendar, sys
ahead = icalendar.Calendar.from_ical(open(sys.argv[1], "rb").read())
events = list(ahead.walk("VEVENT"))
assert not any(e.errors for e in events)
uids = [str(e["UID"]) for e in events]
assert len(uids) == len(set(uids)) > 90
of = lambda group: [e for e in events if group in e["CATEGORIES"].to_ical().decode()]
assert len(of("run")) == 3 and len(of("lure")) == 45 and len(of("card")) == 45
shut = [e for e in of("re-entry") if "Low Pears" in e["SUMMARY"]][0]
assert str(shut["DTEND"].dt) == "2026-07-22 20:00:00+00:00", shut["DTEND"].dt
early = [e for e in of("pick") if "too early" in e["SUMMARY"]]
assert [e["DTSTART"].dt for e in early] == [datetime.date(2026, 7, 22)]
END
check "another reader takes the map" $python "$work/map.py" "$work/map.geojson"
check "another reader takes the waypoints" $python "$work/way.py" "$work/way.gpx"
check "another reader takes the calendar" $python "$work/ahead.py" "$work/ahead.ics"

it export icalendar "$work/later.ics"
names_of() {
	grep '^UID' "$1" | sort
}
names_of "$work/ahead.ics" >"$work/uids" && names_of "$work/later.ics" >"$work/uids.later"
check "a later calendar has the same events" cmp "$work/uids" "$work/uids.later"

finish
