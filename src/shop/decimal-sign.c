/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "shop/decimal-sign.h"

#include <locale.h>

char
spelch_decimal_sign (void)
{
  return localeconv ()->decimal_point[0] == ',' ? ',' : '.';
}
