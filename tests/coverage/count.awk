# Reads `gcov -b -c -t` of one object: a line for the file, one for each line with gaps.
# What it includes has a part of its own and is passed over.
function lay_down() {
	if (missed > 0)
		printf "gap %s:%d: %d of %d: %s\n", want, at, here - missed, here, text
	here = missed = 0
}

/^ +-: +0:Source:/ {
	lay_down()
	ours = substr($0, index($0, "Source:") + 7) == want
}
!ours { next }
/^ *[-#=0-9*]+: *[0-9]+:/ {
	lay_down()
	split($0, part, ":")
	at = part[2] + 0
	text = substr($0, length(part[1]) + length(part[2]) + 3)
	gsub(/^[ \t]+/, "", text)
	if (at > 0 && part[1] !~ /-$/) {
		lines++
		run += part[1] !~ /[#=]/
	}
}
/^branch/ {
	here++
	branches++
	if ($3 == "taken" && $4 > 0)
		taken++
	else
		missed++
}
END {
	lay_down()
	print "file", layer, want, run + 0, lines + 0, taken + 0, branches + 0
}
