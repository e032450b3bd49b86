/* SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kretschmann 2010, Mechanical properties of wood, ch. 5 of the Wood Handbook, USDA Forest Products
 * Laboratory, FPL-GTR-190: read in copies that were compared with one another.
 */
#include "wood-handbook.h"

/* clang-format off */
const HandbookRow HANDBOOK_DOMESTIC[] = {
  /* name, G, GPa, shear, compression across, tension across, hardness N */
  { "Sugar maple (hard maple)", 0.63, 12.6, 16.1, 10.1, 0, 6400 },
  { "Red maple (soft maple)", 0.54, 11.3, 12.8, 6.9, 0, 4200 },
  { "Silver maple (soft maple)", 0.47, 7.9, 10.2, 5.1, 3.4, 3100 },
  { "Bigleaf maple", 0.48, 10.0, 11.9, 5.2, 3.7, 3800 },
  { "White oak", 0.68, 12.3, 13.8, 7.4, 5.5, 6000 },
  { "Northern red oak", 0.63, 12.5, 12.3, 7.0, 5.5, 5700 },
  { "Black walnut", 0.55, 11.6, 9.4, 7.0, 4.8, 4500 },
  { "Black cherry", 0.50, 10.3, 11.7, 4.8, 3.9, 4200 },
  { "White ash", 0.60, 12.0, 13.2, 8.0, 6.5, 5900 },
  { "Yellow birch", 0.62, 13.9, 13.0, 6.7, 6.3, 5600 },
  { "Paper birch", 0.55, 11.0, 8.3, 4.1, 0, 4000 },
  { "Yellow-poplar", 0.42, 10.9, 8.2, 3.4, 3.7, 2400 },
  { "American beech", 0.64, 11.9, 13.9, 7.0, 7.0, 5800 },
  { "Shagbark hickory", 0.72, 14.9, 16.8, 12.1, 0, 8400 },
  { "Mockernut hickory", 0.72, 15.3, 12.0, 11.9, 0, 8800 },
  { "Pignut hickory", 0.75, 15.6, 14.8, 13.7, 0, 9500 },
  { "Pecan hickory", 0.66, 11.9, 14.3, 11.9, 0, 8100 },
  { "American basswood", 0.37, 10.1, 6.8, 2.6, 2.4, 1800 },
  { "Red alder", 0.41, 9.5, 7.4, 3.0, 2.9, 2600 },
  { "Sweetgum", 0.52, 11.3, 11.0, 4.3, 5.2, 3800 },
  { "Eastern white pine", 0.35, 8.5, 6.2, 3.0, 2.1, 1700 },
  { "Ponderosa pine", 0.40, 8.9, 7.8, 4.0, 2.9, 2000 },
  { "Sugar pine", 0.36, 8.2, 7.8, 3.4, 2.4, 1700 },
  { "Loblolly pine (southern pine)", 0.51, 12.3, 9.6, 5.4, 3.2, 3100 },
  { "Longleaf pine (southern pine)", 0.59, 13.7, 10.4, 6.6, 3.2, 3900 },
  { "Shortleaf pine (southern pine)", 0.51, 12.1, 9.6, 5.7, 3.2, 3100 },
  { "Slash pine (southern pine)", 0.59, 13.7, 11.6, 7.0, 0, 0 },
  { "Douglas-fir (coast)", 0.48, 13.4, 7.8, 5.5, 2.3, 3200 },
  { "Douglas-fir (interior west)", 0.50, 12.6, 8.9, 5.2, 2.4, 2900 },
  { "Sitka spruce", 0.40, 10.8, 7.9, 4.0, 2.6, 2300 },
  { "Western redcedar", 0.32, 7.7, 6.8, 3.2, 1.5, 1600 },
  { "Redwood (old-growth)", 0.40, 9.2, 6.5, 4.8, 1.7, 2100 },
  { "Redwood (young-growth)", 0.35, 7.6, 7.6, 3.6, 1.7, 1900 },
  { "Eastern redcedar", 0.47, 6.1, 0, 6.3, 0, 4000 },
};

const HandbookRow HANDBOOK_MORE[] = {
  { "Black ash", 0.49, 0, 0, 0, 0, 3800 },
  { "Green ash", 0.56, 0, 0, 0, 0, 5300 },
  { "Oregon ash", 0.55, 0, 0, 0, 0, 5200 },
  { "Quaking aspen", 0.38, 0, 0, 0, 0, 1600 },
  { "Sweet birch", 0.65, 0, 0, 0, 0, 6500 },
  { "Butternut", 0.38, 0, 0, 0, 0, 2200 },
  { "American chestnut", 0.43, 0, 0, 0, 0, 2400 },
  { "Black cottonwood", 0.35, 0, 0, 0, 0, 1600 },
  { "Eastern cottonwood", 0.40, 0, 0, 0, 0, 1900 },
  { "American elm", 0.50, 0, 0, 0, 0, 3700 },
  { "Slippery elm", 0.53, 0, 0, 0, 0, 3800 },
  { "Hackberry", 0.53, 0, 0, 0, 0, 3900 },
  { "Shellbark hickory", 0.69, 0, 0, 0, 0, 8100 },
  { "Black locust", 0.69, 0, 0, 0, 0, 7600 },
  { "Cucumbertree magnolia", 0.48, 0, 0, 0, 0, 3100 },
  { "Black maple", 0.57, 0, 0, 0, 0, 5200 },
  { "Black oak (red oak group)", 0.61, 0, 0, 0, 0, 5400 },
  { "Cherrybark oak (red oak group)", 0.68, 0, 0, 0, 0, 6600 },
  { "Southern red oak", 0.59, 0, 0, 0, 0, 4700 },
  { "Bur oak (white oak group)", 0.64, 0, 0, 0, 0, 6100 },
  { "Post oak (white oak group)", 0.67, 0, 0, 0, 0, 6000 },
  { "Swamp white oak", 0.72, 0, 0, 0, 0, 7200 },
  { "American sycamore", 0.49, 0, 0, 0, 0, 3400 },
  { "Black tupelo", 0.50, 0, 0, 0, 0, 3600 },
  { "Baldcypress", 0.46, 0, 0, 0, 0, 2300 },
  { "Incense cedar", 0.37, 0, 0, 0, 0, 2100 },
  { "Port-Orford cedar", 0.43, 0, 0, 0, 0, 2800 },
  { "Yellow (Alaska) cedar", 0.44, 0, 0, 0, 0, 2600 },
  { "Douglas-fir (interior north)", 0.48, 0, 0, 0, 0, 2700 },
  { "Balsam fir", 0.35, 0, 0, 0, 0, 1700 },
  { "White fir", 0.39, 0, 0, 0, 0, 2100 },
  { "Western hemlock", 0.45, 0, 0, 0, 0, 2400 },
  { "Western larch", 0.52, 0, 0, 0, 0, 3700 },
  { "Jack pine", 0.43, 0, 0, 0, 0, 2500 },
  { "Lodgepole pine", 0.41, 0, 0, 0, 0, 2100 },
  { "Red pine", 0.46, 0, 0, 0, 0, 2500 },
  { "Virginia pine", 0.48, 0, 0, 0, 0, 3300 },
  { "Engelmann spruce", 0.35, 0, 0, 0, 0, 1750 },
  { "Red spruce", 0.40, 0, 0, 0, 0, 2200 },
  { "White spruce", 0.36, 0, 0, 0, 0, 1800 },
  { "Tamarack", 0.53, 0, 0, 0, 0, 2600 },
};

/* Sapele's row is from memory. */
const HandbookImported HANDBOOK_IMPORTED[] = {
  /* name, basic G, GPa, shear, hardness N */
  { "Mahogany, true", 0.45, 10.3, 8.5, 3600 },
  { "Mahogany, African", 0.42, 9.7, 10.3, 3700 },
  { "Teak", 0.55, 10.7, 13.0, 4400 },
  { "Sapele", 0.55, 12.5, 15.6, 6700 },
  { "Dark red meranti", 0.46, 12.2, 10.0, 3500 },
  { "Light red meranti", 0.34, 8.5, 6.7, 2000 },
  { "Okoume", 0.33, 7.9, 6.7, 1700 },
  { "Limba", 0.38, 7.0, 9.7, 2200 },
  { "Obeche", 0.3, 5.9, 6.8, 1900 },
};

const HandbookInchRow HANDBOOK_INCH[] = {
  /* name, 1e6 psi, compression across, shear, tension across, hardness lbf */
  { "Red alder", 1.38, 440, 1080, 0, 0 },
  { "White ash", 1.74, 1160, 1910, 0, 1320 },
  { "American basswood", 1.46, 370, 990, 0, 0 },
  { "American beech", 1.72, 1010, 2010, 0, 0 },
  { "Yellow birch", 2.01, 970, 1880, 0, 0 },
  { "Black cherry", 1.49, 690, 1700, 0, 0 },
  { "Shagbark hickory", 2.16, 1760, 2430, 0, 1880 },
  { "Sugar maple (hard maple)", 0, 0, 2330, 0, 1450 },
  { "White oak", 0, 0, 0, 0, 1360 },
  { "Northern red oak", 0, 0, 0, 0, 1290 },
  { "Black walnut", 0, 0, 0, 0, 1010 },
  { "Ponderosa pine", 1.29, 580, 1130, 420, 460 },
  { "Sugar pine", 1.19, 500, 1130, 350, 380 },
  { "Redwood (old-growth)", 1.34, 700, 940, 240, 480 },
  { "Shortleaf pine (southern pine)", 1.75, 820, 1390, 470, 690 },
};
/* clang-format on */

const gsize HANDBOOK_N_DOMESTIC = G_N_ELEMENTS (HANDBOOK_DOMESTIC);
const gsize HANDBOOK_N_MORE = G_N_ELEMENTS (HANDBOOK_MORE);
const gsize HANDBOOK_N_IMPORTED = G_N_ELEMENTS (HANDBOOK_IMPORTED);
const gsize HANDBOOK_N_INCH = G_N_ELEMENTS (HANDBOOK_INCH);
