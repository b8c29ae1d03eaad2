#!/bin/sh
# Hot spots: the grower with the bad corner on the demo's book. From Today to the ranked
# list, the numbers behind it, the map and the sources; farms, pests, seasons, flights;
# the command, the sheet, positions from waypoints on a book of its own.
. tests/e2e/lib.sh
. tests/e2e/farm

like() {
	same_screen "screens/$1.txt"
}

spots_of_addermoor() {
	start "$1" "$prog demo"
	wait_for 20 shows '^ mothtally  '
	wait_for 10 shows '^ > Drumsorrel'
	keys Down
	wait_for 10 shows '^ > Addermoor'
	keys h
	wait_for 10 shows '^ Hot .*Addermoor'
}

for size in 80x24 40x16; do
	spots_of_addermoor $size
	check "the bad corner stands first at $size" shows '^ > Old Kiln'
	check "Hot spots at $size" like "hotspots-$size"
	keys m
	wait_for 10 shows 'north   |-'
	check "the map at $size" like "hotspots-map-$size"
	keys m
	wait_for 10 shows '^ > Old Kiln'
	keys Enter
	wait_for 10 shows 'Behind it'
	check "the numbers at $size" like "hotspots-numbers-$size"
done

spots_of_addermoor 80x24
check "the cursor is on the picked row" wait_for 10 cursor_is 1,4
keys m
wait_for 10 shows 'north   |-'
check "the source is named on the map" shows 'Withy Garth (abandoned'
keys Right
check "an arrow picks another trap" wait_for 10 lacks '^ trap 1, Old Kiln'
keys Tab
wait_for 10 settled
resize 30x8
check "a small window keeps the map" wait_for 10 shows 'near it, within'
resize 80x24
keys Escape
wait_for 10 shows '^ > Old Kiln'
keys s
check "sources say how the catch falls away" wait_for 10 shows 'Withy Garth'
check "and that a pattern is no proof" shows 'no proof'
keys b
check "b opens their list in the book" wait_for 10 shows 'Withy Garth *abandoned'
keys Escape
check "and Esc comes back to them" wait_for 10 shows 'no proof'
keys Escape
wait_for 10 shows '^ > Old Kiln'
keys y
check "the season before" wait_for 10 shows '^ Hot spots  Addermoor.*2025'
check "the same corner" shows '^ > Old Kiln'
keys Y
wait_for 10 shows '^ Hot spots  Addermoor.*2026'
keys l
check "the first flight alone" wait_for 10 shows '^ Hot spots  Addermoor.*flight 1'
keys p
check "another pest" wait_for 10 lacks '^ Hot spots  Addermoor.* CM '
keys f
check "another farm" wait_for 10 lacks '^ Hot spots  Addermoor'
keys ?
check "the keys are told" wait_for 10 shows 'like traps'
keys Escape
wait_for 10 shows '^ Hot spots'
keys Escape
check "and back on Today" wait_for 10 shows '^ mothtally  '

# Today leads there: on its line Enter opens the page with that block picked.
keys Home
for line in 1 2 3 4 5 6 7 8 9 10 11; do
	keys Down
done
check "Today names the hot block" wait_for 10 shows '^ > Addermoor  Old Kiln, CM: watch'
keys Enter
check "and leads to it" wait_for 10 shows '^ Hot spots  Addermoor · CM'
check "with its row picked" shows '^ > Old Kiln '

# The clean farms are not accused.
for farm_name in Drumsorrel 'Hather Bend'; do
	book="$work/demo.db"
	if [ ! -e "$book" ]; then
		for kind in traps places visits thresholds weather biofix; do
			$prog --book "$book" --today $day import $kind \
				"share/demo/$kind.csv" >/dev/null
		done
		$prog --book "$book" --today $day import visits \
			share/demo/visits-2025.csv >/dev/null
	fi
	$prog --book "$book" --today $day hotspots --pest CM --farm "$farm_name" \
		--csv >"$work/spots"
	check "$farm_name is not accused" \
		sh -c "! grep -qE '(watch|clear).?\$' '$work/spots'"
done
$prog --book "$book" --today $day hotspots --pest CM >"$work/out"
check "the command leads to the bad corner" grep -q 'Old Kiln' "$work/out"
check "with the usual cautions" grep -q 'label is the law' "$work/out"
$prog --book "$book" --today $day sheet --farm Addermoor >"$work/out"
check "the sheet has a line of it" grep -q '^This season: Old Kiln, CM' "$work/out"

# Without positions it works, and says what is missing; waypoints bring them.
book="$work/own.db"
make_farm "$book"

it() {
	$prog --book "$book" --today $day "$@"
}

it hotspots --pest CM >"$work/out"
check "a farm without positions is answered" grep -q '^Hither Bank' "$work/out"
check "and what is missing is said" grep -q 'position' "$work/out"
{
	echo '<gpx version="1.1" xmlns="http://www.topografix.com/GPX/1/1">'
	awk 'BEGIN {
		for (i = 1; i <= 40; i++)
			printf "<wpt lat=\"41.%04d\" lon=\"165.%04d\"><name>%d</name></wpt>\n",
				2000 + 8 * (i % 7), 2000 + 9 * i, i
	}'
	echo '</gpx>'
} >"$work/way.gpx"
it import gpx "$work/way.gpx" --farm "$farm" >"$work/out"
check "waypoints are positions" grep -q 'positions set: 40,' "$work/out"
it export gpx --farm "$farm" >"$work/back.gpx"
check "and go out again" test "$(grep -c '<wpt ' "$work/back.gpx")" -eq 40
it hotspots --pest CM >"$work/out"
check "now there is a map" grep -q 'north  |-' "$work/out"
cp "$book" "$work/before.db"
echo '<gpx xmlns="http://www.topografix.com/GPX/1/1"><wpt' >"$work/torn.gpx"
it import gpx "$work/torn.gpx" --farm "$farm" >"$work/out" 2>"$work/err"
check "a torn file is refused" test $? -eq 3
check "and the book is as it was" cmp "$book" "$work/before.db"

finish
