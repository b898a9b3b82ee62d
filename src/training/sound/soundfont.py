"""A minimal SoundFont 2 reader (SoundFont Technical Specification 2.04): the zones of a preset, each with its sample."""

import struct

import numpy as np

RECORDS = {
    "phdr": "<20sHHHIII",
    "pbag": "<HH",
    "pgen": "<HH",
    "inst": "<20sH",
    "ibag": "<HH",
    "igen": "<HH",
    "shdr": "<20sIIIIIBbHH",
}
INSTRUMENT, SAMPLE, ROOT_KEY = 41, 53, 58


def read(path):
    """→ {'samples': int16, and each list of records by its name}"""
    with open(path, "rb") as file:
        data = file.read()
    chunks = {}

    def walk(at, end):
        while at < end - 8:
            name = data[at : at + 4]
            size = struct.unpack("<I", data[at + 4 : at + 8])[0]
            if name in (b"RIFF", b"LIST"):
                walk(at + 12, at + 8 + size)
            else:
                chunks[name.decode("latin1")] = (at + 8, size)
            at += 8 + size + (size & 1)

    walk(0, len(data))
    start, size = chunks["smpl"]
    font = {name: list(struct.iter_unpack(form, _body(data, chunks[name]))) for name, form in RECORDS.items()}
    return {**font, "samples": np.frombuffer(data, np.int16, size // 2, start)}


def _body(data, place):
    return data[place[0] : place[0] + place[1]]


def _zones(bags, generators, first, last):
    return [dict(generators[bags[i][0] : bags[i + 1][0]]) for i in range(first, last)]


def zones(font, bank, number):
    """→ [{name, root, start, end, type}] of a preset; type 4 left, 2 right, 1 mono"""
    out = []
    for index, preset in enumerate(font["phdr"][:-1]):
        if preset[1] != number or preset[2] != bank:
            continue
        for zone in _zones(font["pbag"], font["pgen"], preset[3], font["phdr"][index + 1][3]):
            if INSTRUMENT in zone:
                out += _samples(font, zone[INSTRUMENT])
        return out
    raise ValueError(f"the SoundFont has no preset {number} in bank {bank}")


def _samples(font, instrument):
    first, last = font["inst"][instrument][1], font["inst"][instrument + 1][1]
    common, out = {}, []
    for index, zone in enumerate(_zones(font["ibag"], font["igen"], first, last)):
        if SAMPLE not in zone:
            common = zone if index == 0 else common
            continue
        merged = {**common, **zone}
        header = font["shdr"][merged[SAMPLE]]
        root = merged.get(ROOT_KEY, header[6])
        out.append(
            dict(
                name=header[0].split(b"\0")[0].decode("latin1"),
                root=header[6] if root > 127 else root,
                start=header[1],
                end=header[2],
                type=header[9],
            )
        )
    return out
