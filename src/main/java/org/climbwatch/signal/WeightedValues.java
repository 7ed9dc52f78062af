package org.climbwatch.signal;

/** Values that count by weight, for quantiles. */
final class WeightedValues {
  private final double[] value;
  private final double[] weight;
  private int size;
  private double total;

  WeightedValues(int most) {
    value = new double[most];
    weight = new double[most];
  }

  void clear() {
    size = 0;
    total = 0;
  }

  /** Takes a value in its place. */
  void add(double newValue, double newWeight) {
    int i = size;
    while (i > 0 && value[i - 1] > newValue) {
      value[i] = value[i - 1];
      weight[i] = weight[i - 1];
      i--;
    }
    value[i] = newValue;
    weight[i] = newWeight;
    size++;
    total += newWeight;
  }

  /** The middle, and what lies between two tails. */
  Span span(double tail) {
    return new Span(quantile(tail), quantile(0.5), quantile(1 - tail));
  }

  private double quantile(double share) {
    double sum = 0;
    for (int i = 0; i < size; i++) {
      sum += weight[i];
      if (sum >= share * total) {
        return value[i];
      }
    }
    return value[size - 1];
  }
}
