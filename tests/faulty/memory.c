#include "memory.h"

#include <errno.h>
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

static struct {
	long n, calls;
	bool on;
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

#if !SANITIZED
/* The C library's own. */
void *__libc_malloc(size_t n);
void *__libc_calloc(size_t n, size_t size);
void *__libc_realloc(void *old, size_t n);

static bool gives_out(void)
{
	long call = ++memory.calls;
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
