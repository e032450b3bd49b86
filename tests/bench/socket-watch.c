/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Socket watch: loaded before a program's own libraries, it writes each socket that is made, what each is
 * connected with, and each name that is looked up, a line each, to the file SPELCH_SOCKETS names.
 */
#include <dlfcn.h>
#include <netdb.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdio.h>
#include <stdlib.h>
#include <sys/socket.h>
#include <sys/un.h>

__attribute__ ((format (printf, 1, 2))) static void
note (const char *format, ...)
{
  const char *path = getenv ("SPELCH_SOCKETS");
  FILE *file = path == NULL ? NULL : fopen (path, "a");
  if (file == NULL)
    return;
  va_list values;
  va_start (values, format);
  vfprintf (file, format, values);
  va_end (values);
  fclose (file);
}

int
socket (int domain, int type, int protocol)
{
  int (*next) (int, int, int) = (int (*) (int, int, int))dlsym (RTLD_NEXT, "socket");
  note ("socket %d\n", domain);
  return next (domain, type, protocol);
}

int
connect (int fd, __CONST_SOCKADDR_ARG address, socklen_t length)
{
  int (*next) (int, __CONST_SOCKADDR_ARG, socklen_t)
      = (int (*) (int, __CONST_SOCKADDR_ARG, socklen_t))dlsym (RTLD_NEXT, "connect");
  const struct sockaddr_un *to = (const struct sockaddr_un *)address.__sockaddr_un__;
  int size = (int)length - (int)offsetof (struct sockaddr_un, sun_path);
  if (to->sun_family != AF_UNIX)
    note ("connect %d\n", to->sun_family);
  else if (size > 0)
    /* A name that begins with a NUL is no file's. */
    note ("connect %.*s\n", to->sun_path[0] == '\0' ? size - 1 : size,
          to->sun_path[0] == '\0' ? to->sun_path + 1 : to->sun_path);
  return next (fd, address, length);
}

int
getaddrinfo (const char *name, const char *service, const struct addrinfo *hints, struct addrinfo **found)
{
  int (*next) (const char *, const char *, const struct addrinfo *, struct addrinfo **)
      = (int (*) (const char *, const char *, const struct addrinfo *, struct addrinfo **))dlsym (
          RTLD_NEXT, "getaddrinfo");
  note ("lookup %s\n", name == NULL ? "" : name);
  return next (name, service, hints, found);
}
