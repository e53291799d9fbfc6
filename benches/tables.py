"""The peers of `tables`: naive Bayes and a decision tree of scikit-learn, on the same folds.

Reads the tables and prints, for each and for either peer, the chances of all classes for every row,
learnt from the rows of the other folds. Rows are learnt from as they are and named as they were read.
Settings are the library's own. Unknown states count as states.
"""

import json
import sys

import numpy as np
from sklearn.naive_bayes import CategoricalNB, GaussianNB
from sklearn.preprocessing import OneHotEncoder
from sklearn.tree import DecisionTreeClassifier


def naive_bayes(states):
    return CategoricalNB(min_categories=states) if states else GaussianNB()


def chances(model, known, truth, asked, classes):
    model.fit(known, truth)
    out = np.zeros((len(asked), classes))
    out[:, model.classes_] = model.predict_proba(asked)
    return out


def named(table):
    is_in, truth, classes = np.array(table["folds"]), np.array(table["truth"]), table["classes"]
    states = table["states"]
    kind = int if states else float
    rows, read = np.array(table["rows"], kind), np.array(table["read"], kind)
    flat, flat_read = rows, read
    if states:
        hot = OneHotEncoder(categories=[range(many) for many in states], sparse_output=False)
        flat, flat_read = hot.fit_transform(rows), hot.transform(read)
    bayes, tree = np.zeros((len(rows), classes)), np.zeros((len(rows), classes))
    for fold in sorted(set(table["folds"])):
        known, asked = is_in != fold, is_in == fold
        learnt = truth[known]
        bayes[asked] = chances(naive_bayes(states), rows[known], learnt, read[asked], classes)
        grown = DecisionTreeClassifier(random_state=0)
        tree[asked] = chances(grown, flat[known], learnt, flat_read[asked], classes)
    return {"bayes": bayes.tolist(), "tree": tree.tolist()}


def main(path):
    with open(path, encoding="utf-8") as file:
        tables = json.load(file)
    json.dump([named(table) for table in tables], sys.stdout)


if __name__ == "__main__":
    main(sys.argv[1])
