#include "memory.h"

#include <errno.h>
#include <execinfo.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#ifdef __SANITIZE_ADDRESS__
#define SANITIZED 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define SANITIZED 1
#endif
#endif
#ifndef SANITIZED
#define SANITIZED 0
#endif

enum { FRAMES = 12 }; /* ours four among them */

static struct {
	long n, calls;
	bool on;
	struct memory_place *places;
} memory;

bool memory_is_ours(void)
{
	return !SANITIZED;
}

void memory_arm(long n, bool on)
{
	memory.n = n;
	memory.on = on;
	memory.calls = 0;
}

long memory_calls(void)
{
	return memory.calls;
}

void memory_note(struct memory_place *places)
{
	void *frames[FRAMES];

	if (places)
		backtrace(frames, FRAMES); /* it loads what it needs */
	memory.places = places;
}

#if !SANITIZED
static uint64_t stack_now(void)
{
	uint64_t sum = UINT64_C(14695981039346656037);
	void *frames[FRAMES];
	int n = backtrace(frames, FRAMES);

	for (int i = 0; i < n; i++)
		sum = (sum ^ (uintptr_t)frames[i]) * UINT64_C(1099511628211);
	return sum ? sum : 1;
}

static void note_place(void)
{
	struct memory_place *all = memory.places;

	memory.places = NULL; /* what is asked for on the way is not noted */
	uint64_t stack = stack_now();
	size_t at = (size_t)(stack >> 32) % MEMORY_PLACES;
	for (size_t i = 0; i < MEMORY_PLACES; i++, at = (at + 1) % MEMORY_PLACES) {
		if (all[at].stack != stack && all[at].stack != 0)
			continue;
		if (all[at].stack == 0)
			all[at] = (struct memory_place){ stack, memory.calls, 0 };
		all[at].last = memory.calls;
		break;
	}
	memory.places = all;
}

/* The C library's own. */
void *__libc_malloc(size_t n);
void *__libc_calloc(size_t n, size_t size);
void *__libc_realloc(void *old, size_t n);

static bool gives_out(void)
{
	long call = ++memory.calls;
	if (memory.places)
		note_place();
	bool out = memory.n > 0 && (memory.on ? call >= memory.n : call == memory.n);

	if (out)
		errno = ENOMEM;
	return out;
}

void *malloc(size_t n)
{
	return gives_out() ? NULL : __libc_malloc(n);
}

void *calloc(size_t n, size_t size)
{
	return gives_out() ? NULL : __libc_calloc(n, size);
}

void *realloc(void *old, size_t n)
{
	return gives_out() ? NULL : __libc_realloc(old, n);
}

/* As the C library's, which does not come by here. */
void *reallocarray(void *old, size_t n, size_t size)
{
	if (size > 0 && n > SIZE_MAX / size) {
		errno = ENOMEM;
		return NULL;
	}
	return realloc(old, n * size);
}
#endif
