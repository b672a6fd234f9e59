/*
 * Loaded before the C library (LD_PRELOAD): while the file named by STUBBORN_FLAG exists, everything below STUBBORN_FOLDER
 * may only be read. That is what a kernel does to a disk whose errors it can no longer write around (ext4,
 * errors=remount-ro): files stay open, and every change answers EROFS. The orderly way, mount -o remount,ro, is refused by the
 * kernel while a file is open for writing, so it cannot be tried on a running server.
 */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <limits.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/types.h>
#include <unistd.h>

static int on(void) {
  const char *flag = getenv("STUBBORN_FLAG");
  return flag && access(flag, F_OK) == 0;
}
static int inside(const char *path) {
  const char *folder = getenv("STUBBORN_FOLDER");
  return folder && path && strncmp(path, folder, strlen(folder)) == 0;
}
static int inside_fd(int fd) {
  char link[64], path[PATH_MAX + 1];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, path, PATH_MAX);
  if (length < 0) return 0;
  path[length] = 0;
  return inside(path);
}
static int refuse(void) {
  errno = EROFS;
  return -1;
}
#define REAL(name) ((__typeof__(&name))dlsym(RTLD_NEXT, #name))

#define OPEN(name)                                                      \
  int name(const char *path, int flags, ...) {                          \
    va_list rest;                                                       \
    va_start(rest, flags);                                              \
    mode_t mode = va_arg(rest, mode_t);                                 \
    va_end(rest);                                                       \
    int writes = (flags & (O_WRONLY | O_RDWR | O_TRUNC)) != 0;          \
    int makes = (flags & O_CREAT) && access(path, F_OK) != 0;           \
    if (on() && inside(path) && (writes || makes)) return refuse();     \
    return REAL(name)(path, flags, mode);                               \
  }
OPEN(open)
OPEN(open64)

#define ON_FD(type, name, parameters, arguments)    \
  type name parameters {                            \
    if (on() && inside_fd(fd)) return refuse();     \
    return REAL(name) arguments;                    \
  }
ON_FD(ssize_t, write, (int fd, const void *bytes, size_t count), (fd, bytes, count))
ON_FD(ssize_t, pwrite, (int fd, const void *bytes, size_t count, off_t at), (fd, bytes, count, at))
ON_FD(ssize_t, pwrite64, (int fd, const void *bytes, size_t count, off64_t at), (fd, bytes, count, at))
ON_FD(int, ftruncate, (int fd, off_t length), (fd, length))
ON_FD(int, ftruncate64, (int fd, off64_t length), (fd, length))

#define ON_PATH(name, parameters, path, arguments)  \
  int name parameters {                             \
    if (on() && inside(path)) return refuse();      \
    return REAL(name) arguments;                    \
  }
ON_PATH(unlink, (const char *path), path, (path))
ON_PATH(rename, (const char *path, const char *to), path, (path, to))
ON_PATH(mkdir, (const char *path, mode_t mode), path, (path, mode))
