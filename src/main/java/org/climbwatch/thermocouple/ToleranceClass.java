package org.climbwatch.thermocouple;

/** How closely new wire follows its reference function. */
public enum ToleranceClass {
  IEC_1,
  IEC_2,
  ASTM_STANDARD,
  ASTM_SPECIAL
}
