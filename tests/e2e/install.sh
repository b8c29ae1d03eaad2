#!/bin/sh
# make install and make uninstall: what is put where, and that nothing stays.
. tests/e2e/lib.sh

root=$work/root
build=${BUILD:-build}

make_it() {
	env -u MAKEFLAGS -u MFLAGS make -s BUILD="$build" DESTDIR="$root" PREFIX=/opt/fruit "$1"
}

put() {
	(cd "$root/opt/fruit" && find . ! -type d | sort | tr '\n' ' ')
}

check "make install succeeds" make_it install
wanted='./bin/mothtally ./share/bash-completion/completions/mothtally '
[ ! -e "$build/locale/es" ] ||
	wanted="$wanted./share/locale/es/LC_MESSAGES/mothtally.mo "
wanted="$wanted./share/man/man1/mothtally.1 ./share/man/man5/mothtally.5 "
wanted="$wanted./share/zsh/site-functions/_mothtally "
check "it puts the program, two manual pages, Spanish, what shells complete" \
	[ "$(put)" = "$wanted" ]
check "the installed program runs" \
	eval '"$root/opt/fruit/bin/mothtally" --version >"$work/out"'
check "the installed manual is whole" \
	cmp man/mothtally.1 "$root/opt/fruit/share/man/man1/mothtally.1"
check "make uninstall succeeds" make_it uninstall
check "nothing stays" [ -z "$(find "$root" ! -type d)" ]

finish
