/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Processor time: what a benchmark takes of it, whatever else the machine does meanwhile.
 */
#pragma once

#include <time.h>

/* What this program has taken so far, ms. */
static inline double
processor_ms (void)
{
  struct timespec now;
  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &now);
  return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}
