"""The peer of `looks`: the same looks with NumPy, on the dense table.

Reads the task, makes the table of probabilities from the kinds of its cells, writes the chances of
all taxa and then the bits of all characters after the last look into the file that the task names,
and prints the least user CPU time of one look in seconds, over blocks of runs, as this process
measured it.

A look adds the logarithms of one row of the table to those of the taxa, works out their chances, and
then what every character that was not looked at would tell: one product of the chances with the
table and one with the entropies, which are worked out beforehand.
"""

import json
import math
import resource
import sys

import numpy as np


def dense(task):
    """Probabilities by character, answer and taxon; negative entropies by character and taxon."""
    shape = (task["characters"], task["taxa"])
    codes = np.fromfile(task["cells"], np.uint8).reshape(shape)
    kinds = np.asarray(task["kinds"])
    answers = kinds.T.astype(np.float32)
    entropies = (kinds * np.log2(kinds)).sum(1).astype(np.float32)
    table = np.empty((shape[0], len(answers), shape[1]), np.float32)
    heights = np.empty(shape, np.float32)
    for at, row in enumerate(codes):
        for answer, of_kind in enumerate(answers):
            np.take(of_kind, row, out=table[at, answer])
        np.take(entropies, row, out=heights[at])
    return table, heights


def look(table, heights, logs, character, answer):
    logs += np.log(table[character, answer].astype(np.float64))
    chances = np.exp(logs - logs.max())
    chances /= chances.sum()
    characters, answers, taxa = table.shape
    low = chances.astype(np.float32)
    given = (table.reshape(characters * answers, taxa) @ low).reshape(characters, answers)
    given = given.astype(np.float64)
    bits = (heights @ low).astype(np.float64) - (given * np.log2(given)).sum(1)
    return chances, bits


def session(table, heights, task):
    logs = np.zeros(task["taxa"])
    for character, answer in task["looks"]:
        chances, bits = look(table, heights, logs, character, answer)
    return chances, bits


def user_seconds():
    return resource.getrusage(resource.RUSAGE_SELF).ru_utime


def main(path):
    with open(path, encoding="utf-8") as file:
        task = json.load(file)
    table, heights = dense(task)
    np.concatenate(session(table, heights, task)).tofile(task["answers"])
    least = math.inf
    for _ in range(task["blocks"]):
        start = user_seconds()
        for _ in range(task["runs"]):
            session(table, heights, task)
        least = min(least, user_seconds() - start)
    print(least / task["runs"] / len(task["looks"]), table.nbytes + heights.nbytes)


if __name__ == "__main__":
    main(sys.argv[1])
