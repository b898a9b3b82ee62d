"""Random figures for a batch of clips, of which some were recorded at the same place and share its figures."""

import torch


class Draws:
    """place (clips,): clips with the same number get the same figures from `place_*`, each its own from `own_*`."""

    def __init__(self, place, device):
        self.place = place
        self.count = len(place)
        self.places = int(place.max()) + 1
        self.device = device

    def place_uniform(self, low, high):
        return self._share(torch.rand(self.places, 1, device=self.device)) * (high - low) + low

    def place_normal(self):
        return self._share(torch.randn(self.places, 1, device=self.device))

    def place_chance(self, probability):
        return self._share((torch.rand(self.places, 1, device=self.device) < probability).float())

    def place_integer(self, low, high):
        return self._share(torch.randint(low, high, (self.places, 1), device=self.device))

    def own_uniform(self, low, high):
        return torch.rand(self.count, 1, device=self.device) * (high - low) + low

    def own_chance(self, probability):
        return (torch.rand(self.count, 1, device=self.device) < probability).float()

    def _share(self, values):
        return values[self.place]
