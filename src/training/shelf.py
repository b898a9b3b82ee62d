"""Batches that were learnt from before, to learn from again: a GPU renders one in the time of many steps."""

import collections
import random

NEW_FOR_EACH = 40


class Shelf:
    """The last `most` batches. One is drawn only where NEW_FOR_EACH lie there for it, lest the first be learnt by heart."""

    def __init__(self, seed, most):
        self.batches, self.chance = collections.deque(maxlen=most), random.Random(seed)

    def put(self, batch):
        self.batches.append(batch)

    def earlier(self, most):
        """→ up to `most` batches of those that lie there"""
        count = min(most, len(self.batches) // NEW_FOR_EACH)
        return [self.chance.choice(self.batches) for _ in range(count)]
