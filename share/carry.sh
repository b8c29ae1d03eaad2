#!/bin/sh
# Writes C that carries the named files of share/ inside the program.
set -eu
echo '#include "base/shipped.h"'
echo '#include <string.h>'
n=0
for file in "$@"; do
	echo "static const char file_${n}[] = {"
	od -An -v -tu1 "$file" | sed 's/  *\([0-9][0-9]*\)/(char)\1,/g'
	echo '0 };'
	n=$((n + 1))
done
echo 'static const struct shipped files[] = {'
n=0
for file in "$@"; do
	echo "{ \"${file#share/}\", file_$n, sizeof file_$n - 1 },"
	n=$((n + 1))
done
cat <<'C'
{ NULL, NULL, 0 } };
const struct shipped *shipped_find(const char *name)
{
	for (const struct shipped *f = files; f->name; f++)
		if (strcmp(f->name, name) == 0)
			return f;
	return NULL;
}
C
