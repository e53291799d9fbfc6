"""The peer of `draws`: the same products and percentiles with NumPy.

Reads the parameters that `draws` reads, and prints one line: the percentiles, then the least user
CPU time of one run in seconds, over blocks of runs, as this process measured it.
"""

import json
import math
import resource
import statistics
import sys

import numpy as np

Z95 = statistics.NormalDist().inv_cdf(0.95)


def log_normal(factor):
    """Mean and standard deviation of the logarithm, from the 5th and 95th percentiles."""
    low, high = math.log(factor["p5"]), math.log(factor["p95"])
    return (low + high) / 2, (high - low) / (2 * Z95)


def run(rng, factors, draws, percentiles):
    product = rng.lognormal(*factors[0], draws)
    for mean, sd in factors[1:]:
        product *= rng.lognormal(mean, sd, draws)
    return np.percentile(product, percentiles)


def main(path):
    with open(path, encoding="utf-8") as file:
        task = json.load(file)
    factors = [log_normal(factor) for factor in task["factors"]]
    rng = np.random.default_rng(task["random_start"])
    work = (rng, factors, task["draws"], task["percentiles"])
    answer = run(*work)
    least = math.inf
    for _ in range(task["blocks"]):
        start = resource.getrusage(resource.RUSAGE_SELF).ru_utime
        for _ in range(task["runs"]):
            run(*work)
        spent = resource.getrusage(resource.RUSAGE_SELF).ru_utime - start
        least = min(least, spent / task["runs"])
    print(*(float(value) for value in answer), least)


if __name__ == "__main__":
    main(sys.argv[1])
