package dev.filmward.pipeline;

/** The measured subgroups of one series in time order, by index from 0. */
interface SubgroupColumn {
  int count();

  int size(int index);

  double mean(int index);

  double sumOfSquares(int index);
}
