"""A reader of QR codes for tests, written after ISO/IEC 18004 (model 2) from memory: no part of the product is used.

Takes a square of modules, True dark; gives the text and the error level. Versions 1 to 6, bytes only. It corrects
nothing: codewords whose Reed-Solomon syndromes are not zero are refused.
"""

QUIET_MODULES = 4  # free edge on all sides, ISO/IEC 18004, from memory
LEVELS = {0b01: "L", 0b00: "M", 0b11: "Q", 0b10: "H"}
FORMAT_MASK = 0b101010000010010
CENTRES = {1: (), 2: (6, 18), 3: (6, 22), 4: (6, 26), 5: (6, 30), 6: (6, 34)}
# (version, level): codewords for correction in a block, then the data codewords of each block
BLOCKS = {
    (1, "L"): (7, [19]), (1, "M"): (10, [16]), (1, "Q"): (13, [13]), (1, "H"): (17, [9]),
    (2, "L"): (10, [34]), (2, "M"): (16, [28]), (2, "Q"): (22, [22]), (2, "H"): (28, [16]),
    (3, "L"): (15, [55]), (3, "M"): (26, [44]), (3, "Q"): (18, [17] * 2), (3, "H"): (22, [13] * 2),
    (4, "L"): (20, [80]), (4, "M"): (18, [32] * 2), (4, "Q"): (26, [24] * 2), (4, "H"): (16, [9] * 4),
    (5, "L"): (26, [108]), (5, "M"): (24, [43] * 2), (5, "Q"): (18, [15, 15, 16, 16]), (5, "H"): (22, [11, 11, 12, 12]),
    (6, "L"): (18, [68] * 2), (6, "M"): (16, [27] * 4), (6, "Q"): (24, [19] * 4), (6, "H"): (28, [15] * 4),
}  # fmt: skip
MASKS = (
    lambda i, j: (i + j) % 2 == 0,
    lambda i, j: i % 2 == 0,
    lambda i, j: j % 3 == 0,
    lambda i, j: (i + j) % 3 == 0,
    lambda i, j: (i // 2 + j // 3) % 2 == 0,
    lambda i, j: (i * j) % 2 + (i * j) % 3 == 0,
    lambda i, j: ((i * j) % 2 + (i * j) % 3) % 2 == 0,
    lambda i, j: ((i + j) % 2 + (i * j) % 3) % 2 == 0,
)


def read(grid):
    """(text, error level) of a square of modules without its quiet edge."""
    version = (len(grid) - 17) // 4
    level, mask = format_of(grid)
    blocks = blocks_of(codewords_of(grid, version, mask), *BLOCKS[version, level])
    correction = BLOCKS[version, level][0]
    if any(any(syndromes(data + spare, correction)) for data, spare in blocks):
        raise ValueError("the modules are no codewords: syndromes are not zero")
    return text_of([word for data, _spare in blocks for word in data]), level


def format_of(grid):
    """Error level and mask, from the copy around the upper left finder."""
    places = [(8, 0), (8, 1), (8, 2), (8, 3), (8, 4), (8, 5), (8, 7), (8, 8), (7, 8)]
    places += [(row, 8) for row in range(5, -1, -1)]
    bits = int("".join(str(int(grid[row][column])) for row, column in places), 2) ^ FORMAT_MASK
    return LEVELS[bits >> 13], bits >> 10 & 0b111


def is_function(row, column, size, version):
    """Modules that carry no data: finders with their edges and format, timing, alignment."""
    if (row < 9 and (column < 9 or column >= size - 8)) or (row >= size - 8 and column < 9):
        return True
    if row == 6 or column == 6:
        return True
    corners = {(6, 6), (6, size - 7), (size - 7, 6)}
    centres = [(a, b) for a in CENTRES[version] for b in CENTRES[version] if (a, b) not in corners]
    return any(abs(row - a) <= 2 and abs(column - b) <= 2 for a, b in centres)


def codewords_of(grid, version, mask):
    """Data modules in pairs of columns from the right, up and down by turns, the mask taken off."""
    size, bits, upward = len(grid), [], True
    for right in [*range(size - 1, 6, -2), 5, 3, 1]:
        for row in range(size - 1, -1, -1) if upward else range(size):
            for column in (right, right - 1):
                if not is_function(row, column, size, version):
                    bits.append(bool(grid[row][column]) ^ MASKS[mask](row, column))
        upward = not upward
    whole = len(bits) // 8 * 8
    return [int("".join(str(int(bit)) for bit in bits[at : at + 8]), 2) for at in range(0, whole, 8)]


def blocks_of(codewords, correction, sizes):
    """[(data, correction)] of each block out of the interleaved codewords."""
    data: list = [[] for _size in sizes]
    words = iter(codewords)
    for place in range(max(sizes)):
        for block, size in zip(data, sizes, strict=True):
            if place < size:
                block.append(next(words))
    spare: list = [[] for _size in sizes]
    for _place in range(correction):
        for block in spare:
            block.append(next(words))
    return list(zip(data, spare, strict=True))


def syndromes(codewords, correction):
    """The codewords as a polynomial over GF(256), modulo x8 + x4 + x3 + x2 + 1, at powers 0 on of its root."""
    found, point = [], 1
    for _power in range(correction):
        value = 0
        for word in codewords:
            value = times(value, point) ^ word
        found.append(value)
        point = times(point, 2)
    return found


def times(a, b):
    product = 0
    while b:
        product ^= a if b & 1 else 0
        a = a << 1 ^ (0x11D if a & 0x80 else 0)
        b >>= 1
    return product


def text_of(data):
    """Bytes in one segment: mode 0100, eight bits of length up to version 9."""
    bits = "".join(f"{word:08b}" for word in data)
    if bits[:4] != "0100":
        raise ValueError(f"mode {bits[:4]} is not bytes")
    length = int(bits[4:12], 2)
    return bytes(int(bits[at : at + 8], 2) for at in range(12, 12 + 8 * length, 8)).decode()
