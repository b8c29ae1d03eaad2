/* exit.c - linked into every program of `make coverage` with --wrap=_exit, since the
 * children of tests end that way and would take their counts with them. */
#include <gcov.h>
#include <unistd.h>

_Noreturn void __real__exit(int status);
_Noreturn void __wrap__exit(int status);

void __wrap__exit(int status)
{
	__gcov_dump();
	__real__exit(status);
}
