/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Length: a length in millimetres together with the words it was typed in, so that what a person wrote
 * is shown and saved again as they wrote it. One reader serves files, the command line and entry fields.
 */
#pragma once

#include <glib.h>
#include <stdbool.h>

#define SPELCH_TYPED_SIZE  32
#define SPELCH_MM_PER_INCH 25.4

typedef enum
{
  SPELCH_UNIT_MM,
  SPELCH_UNIT_INCH,
} SpelchUnit;

/* How inches are shown: as decimals, or as fractions to 1/64. */
typedef enum
{
  SPELCH_INCH_FRACTION,
  SPELCH_INCH_DECIMAL,
} SpelchInchStyle;

typedef struct
{
  double mm;                     /* always finite */
  char typed[SPELCH_TYPED_SIZE]; /* as typed, white space at the ends removed; "" when computed */
} SpelchLength;

#define SPELCH_LENGTH_ERROR (spelch_length_error_quark ())
GQuark spelch_length_error_quark (void);

typedef enum
{
  SPELCH_LENGTH_ERROR_EMPTY,      /* nothing but white space */
  SPELCH_LENGTH_ERROR_NOT_NUMBER, /* something that isn't a number or a unit */
  SPELCH_LENGTH_ERROR_UNIT,       /* a unit this program doesn't read */
  SPELCH_LENGTH_ERROR_AMBIGUOUS,  /* both decimal signs, or a sign used twice */
  SPELCH_LENGTH_ERROR_FRACTION,   /* zero or absurd denominator, or a fraction of millimetres */
  SPELCH_LENGTH_ERROR_RANGE,      /* more than 100 m either way, or more than 31 bytes typed */
} SpelchLengthError;

/* A length that was computed or given as a plain number. @mm must be finite. */
SpelchLength spelch_length_mm (double mm);

/* Reads @text: `15.9`, `15,9 mm`, `5/8`, `1 1/4"`, `1-1/4 in`, `0.625 in`, `1.2 m`, `3 cm`, `6 ft`, `1 200
 * mm`. A bare fraction is inches; a bare decimal takes @shown. Point and comma are both decimal signs; digits
 * are grouped only by spaces (ordinary, no-break, narrow). A leading minus is read (callers decide whether a
 * negative length makes sense). Never depends on the locale. Errors: SPELCH_LENGTH_ERROR, with a sentence for
 * the person who typed. */
bool spelch_length_parse (const char *text, SpelchUnit shown, SpelchLength *length, GError **error);

/* The same, as somebody types it whose language has @decimal_sign: with the other one before exactly three
 * digits, "1,234", it may as well be thousands and is refused as ambiguous. */
bool spelch_length_read (const char *text, SpelchUnit shown, char decimal_sign, SpelchLength *length,
                         GError **error);

/* @mm written in @unit: "18.3 mm", "23/32 in", "0.72 in". @decimals counts for millimetres (inch decimals
 * get one more than twice that, at most 4); trailing zeros are kept so that columns line up. A fraction is
 * used only when it is within 0.005 mm of a 64th; otherwise decimals. @decimal_sign is '.' or ','. Free with
 * g_free(). */
char *spelch_length_format (double mm, SpelchUnit unit, SpelchInchStyle style, int decimals,
                            char decimal_sign);

/* What to show for @length: the typed words when there are any and they carry a unit or the unit they'd
 * take is @unit; otherwise spelch_length_format() with up to 2 decimals and no trailing zeros. Free with
 * g_free(). */
char *spelch_length_show (const SpelchLength *length, SpelchUnit unit, SpelchInchStyle style,
                          char decimal_sign);

/* Has it typed with that decimal sign, whoever typed it. */
void spelch_length_take_sign (SpelchLength *length, char decimal_sign);

/* The same as spelch_length_show(), with the unit that it was read in where it was typed without one, and
 * with the reader's decimal sign: for sentences and captions. */
char *spelch_length_show_whole (const SpelchLength *length, SpelchUnit unit, SpelchInchStyle style,
                                char decimal_sign);
