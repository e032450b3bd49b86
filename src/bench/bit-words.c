/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench/bit-words.h"

#include <glib/gi18n-lib.h>
#include <string.h>

static const char *
short_kind (SpelchBitKind kind)
{
  switch (kind)
    {
    case SPELCH_BIT_UP_CUT:
      return _ ("up-cut");
    case SPELCH_BIT_DOWN_CUT:
      return _ ("down-cut");
    case SPELCH_BIT_COMPRESSION:
      /* Translators: short for compression bit, under a small picture */
      return _ ("compr.");
    case SPELCH_BIT_STRAIGHT:
    default:
      return _ ("straight");
    }
}

/* Two decimals at most, without zeros at the end. */
static char *
plain_millimetres (double mm, char decimal_sign)
{
  SpelchLength length = spelch_length_mm (mm);
  return spelch_length_show (&length, SPELCH_UNIT_MM, SPELCH_INCH_FRACTION, decimal_sign);
}

char *
spelch_bit_short_name (const SpelchBit *bit, char decimal_sign)
{
  g_autofree char *size = plain_millimetres (bit->diameter.mm, decimal_sign);
  char *unit = strstr (size, " mm");
  if (unit != NULL)
    *unit = '\0';
  /* Translators: diameter in mm and kind of bit: "6.35 up-cut" */
  return g_strdup_printf (C_ ("short name of a bit", "%s %s"), size, short_kind (bit->kind));
}

char *
spelch_bit_full_name (const SpelchBit *bit, char decimal_sign)
{
  g_autofree char *mm = plain_millimetres (bit->diameter.mm, decimal_sign);
  g_autofree char *inch
      = spelch_length_format (bit->diameter.mm, SPELCH_UNIT_INCH, SPELCH_INCH_FRACTION, 1, decimal_sign);
  g_autofree char *length = plain_millimetres (bit->cutting_length.mm, decimal_sign);
  g_autofree char *pointed = plain_millimetres (bit->diameter.mm, '.'); /* as names are written in files */
  bool tells_mm = strstr (bit->name, mm) != NULL || strstr (bit->name, pointed) != NULL;
  bool tells_both = tells_mm && strstr (bit->name, inch) != NULL;
  if (tells_both)
    return g_strdup_printf (_ ("%s, cuts %s deep"), bit->name, length);
  if (tells_mm)
    /* Translators: name of a bit, which tells its diameter in mm; the same in inches; its cutting length */
    return g_strdup_printf (_ ("%s (%s), cuts %s deep"), bit->name, inch, length);
  /* Translators: name of a bit, its diameter in mm and inches, its cutting length */
  return g_strdup_printf (_ ("%s, %s (%s), cuts %s deep"), bit->name, mm, inch, length);
}
