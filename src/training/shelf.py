"""Batches that were learnt from before, to learn from again: a GPU renders one in the time of many steps."""

import collections
import random

MOST, NEW_FOR_EACH = 1200, 40


class Shelf:
    """The last MOST batches. One is drawn only where NEW_FOR_EACH lie there for it, lest the first be learnt by heart."""

    def __init__(self, seed):
        self.batches, self.chance = collections.deque(maxlen=MOST), random.Random(seed)

    def put(self, batch):
        self.batches.append(batch)

    def earlier(self, most):
        """→ up to `most` batches of those that lie there"""
        count = min(most, len(self.batches) // NEW_FOR_EACH)
        return [self.chance.choice(self.batches) for _ in range(count)]
