"""Draw the aerial-like imagery of the three sample scenarios, one picture per site in the CRS of the scenario.

Each function paints one site from the ground up: soil, relief, water, plants, roads, buildings, the structure.
"""

import math

import numpy as np
from drawing import (
    Site,
    along,
    bearing,
    beside,
    cast,
    curve,
    domes,
    enlarge,
    erode,
    gullies,
    mix,
    noise,
    ramp,
    shade,
    warp,
)
from scipy import ndimage
from scipy.spatial import cKDTree

# Corners of a closed square about the origin.
SQUARE = ((-1, -1), (1, -1), (1, 1), (-1, 1), (-1, -1))


def light_range(path, lines):
    """High plain: straw-coloured grass, cushion bush, dry washes, a wet meadow, a lagoon in its salt flat, and three
    covered runs with service roads from one hub.
    """
    sun, shape, step = 52.0, (1440, 2800), 8
    alder, birch, cedar = lines
    hub = alder[0]
    site = Site(32719, (hub[0] - 600, hub[1] + 60), 3.0, shape)
    # Drained towards the south-west, where the lagoon lies.
    height, area, receiver = erode(shape, step, 321, (-0.030, 0.016), bumps=0.9, rounds=30)
    relief = warp(enlarge(height, shape, step), 331, 7, 170)
    # A straight structure needs ground without steps: the relief is flattened beside the runs.
    near = np.maximum.reduce([site.stroke(line, 380) for line in lines])
    near = ndimage.zoom(ndimage.gaussian_filter(near[::8, ::8], 9), 8, order=1)[: shape[0], : shape[1]]
    broad_relief = ndimage.zoom(ndimage.gaussian_filter(relief[::8, ::8], 22), 8, order=1)[: shape[0], : shape[1]]
    relief -= 0.7 * near * (relief - broad_relief)
    broad, rough, fine = noise(shape, 341, 3.0, 900), noise(shape, 342, 2.3, 260), noise(shape, 343, 1.2, 50)
    streams = [warp(gullies(shape, step, area, receiver, *size), 331, 7, 170) for size in ((260, 1.1), (900, 2.0))]
    wet = warp(enlarge(ndimage.gaussian_filter(np.log(area), 1.4), shape, step), 331, 7, 170)
    gy, gx = np.gradient(ndimage.gaussian_filter(relief, 2))
    steep = np.hypot(gx, gy)
    steep /= np.percentile(steep, 99)
    y, x = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32) * site.pixel
    east, north = x + site.west - hub[0], site.north - y - hub[1]  # metres from the hub
    # The flat: metres inside its shore, which wanders; it takes the south-west and reaches the end of Cedar.
    shore = -np.hypot((east + 1250) / 1.75, north + 2420) + 1235 + 95 * noise(shape, 351, 3.3, 420) + 18 * rough
    flat = ramp(shore, -16, 16)
    water = ramp(-np.hypot((east + 1620) / 1.5, north + 1830) + 430 + 60 * noise(shape, 352, 3.2, 320), -8, 8)
    image = site.image
    image[:] = (176, 160, 116)
    site.paint(ramp(broad, -1.3, 1.3), (160, 148, 106), 0.9)
    site.paint(ramp(noise(shape, 344, 2.7, 520), 0.0, 1.6), (192, 176, 130), 0.75)
    site.paint(ramp(rough + 0.5 * fine, 0.1, 1.8), (142, 136, 92), 0.6)
    site.paint(ramp(noise(shape, 345, 2.2, 340) - 0.3 * broad, 0.5, 1.9), (150, 130, 104), 0.55)
    site.paint(ramp(wet, 2.2, 4.8) * ramp(rough, -1.2, 0.9), (126, 132, 84), 0.6)
    stones = ramp(steep + 0.15 * rough + 0.10 * fine, 0.62, 1.0)
    site.paint(stones, (122, 108, 92), 0.8)
    # Where grass was burnt last year it is short and darker, with ragged edges drawn out by the west wind.
    burnt = ramp(noise(shape, 346, 2.9, 430) + 0.14 * rough + 0.06 * fine, 1.0, 1.12) * (1 - flat)
    site.paint(burnt, (136, 124, 88), 0.5)
    light = shade(relief * 4.2 + 0.16 * rough + 0.05 * fine, sun, 42)
    image *= (0.34 + 0.66 * light)[..., None]
    # Washes, and the wet meadow in which Alder has settled.
    site.paint(np.clip(ndimage.gaussian_filter(streams[0], 6) * 1.7, 0, 1), (186, 172, 130), 0.5)
    for stream, opacity in zip(streams, (0.75, 0.9)):
        site.paint(np.clip(stream * 1.1, 0, 1) * (1 - flat), (214, 204, 172), opacity)
    ((row, column),) = site.at([along(alder, 1650, 60)])
    dy, dx = y / site.pixel - row, x / site.pixel - column
    turned = (dx * 0.42 + dy * 0.91, dx * 0.91 - dy * 0.42)
    meadow = ramp(1 - np.hypot(turned[0] / 175, turned[1] / 58) + 0.22 * rough + 0.05 * fine, 0.0, 0.22)
    site.paint(ramp(ndimage.gaussian_filter(meadow, 8), 0.05, 0.6), (140, 138, 82), 0.6)
    site.paint(meadow, (122, 130, 78), 0.8)
    site.paint(meadow * ramp(rough + fine, 0.7, 1.9), (88, 102, 72), 0.75)
    # The flat: brown silt, then polygons of salt, white near the water; the lagoon.
    silt = ramp(ndimage.gaussian_filter(flat, 22), 0.04, 0.5)
    site.paint(silt, (186, 170, 138), 0.7)
    site.paint(flat, (206, 196, 174), 0.9)
    crust = ramp(shore + 70 * noise(shape, 353, 2.6, 260) + 16 * fine, 90, 330)
    site.paint(crust, (236, 234, 226), 0.85)
    rng = np.random.default_rng(354)
    seeds = rng.uniform((0, 0), shape, (14000, 2))
    distance, _ = cKDTree(seeds).query(np.stack(np.mgrid[0 : shape[0], 0 : shape[1]], -1).reshape(-1, 2), k=2)
    crack = ramp(-(distance[:, 1] - distance[:, 0]).reshape(shape).astype(np.float32), -1.5, -0.4)
    site.darken(crack * crust, 0.10)
    margin = ramp(ndimage.gaussian_filter(water, 16), 0.02, 0.5)
    site.paint(margin * (1 - water), (184, 176, 154), 0.7)
    deep = ramp(ndimage.gaussian_filter(water, 30), 0.45, 1.0)
    mix(image, np.array((146, 168, 158), np.float32) * (1 + 0.02 * rough + 0.012 * fine)[..., None], water)
    site.paint(water * deep, (96, 134, 136), 0.8)
    site.paint(water * ramp(-deep, -0.16, -0.03), (178, 186, 168), 0.6)
    # Plants: grass tussocks everywhere, dark cushion bush in patches, none on the salt.
    land = (1 - flat) * (1 - 0.9 * meadow)
    patch = ramp(noise(shape, 361, 2.0, 180), -0.8, 1.7)
    tussock = domes(shape, 362, 4.4, (0.5, 1.1), (0.16 + 0.5 * patch) * land * (1 - 0.5 * burnt))
    bush_place = ramp(noise(shape, 363, 2.1, 300) + 0.4 * rough, 0.3, 1.7) * land * (1 - 0.7 * burnt)
    bush = domes(shape, 364, 4.6, (0.7, 1.7), 0.05 * land + 0.55 * bush_place)
    for crowns, colour, opacity, reach in ((tussock, (186, 172, 112), 0.55, 0.9), (bush, (92, 98, 66), 0.85, 1.5)):
        cover = np.clip(crowns * 1.3, 0, 1)
        site.darken(np.clip(cast(cover, sun, reach) - cover, 0, 1), 0.34)
        mix(
            image, np.array(colour, np.float32) * np.clip(shade(crowns, sun, 45), 0.55, 1.4)[..., None], cover * opacity
        )
    # Gravel roads to the hub, tracks of herders, a farm with its stone pens.
    e, n = hub
    # None crosses a run: one road comes from the east, one from the west.
    road = curve(
        [
            (e + 3800, n - 700),
            (e + 2500, n - 640),
            (e + 1500, n - 420),
            (e + 700, n - 330),
            (e + 260, n - 210),
            (e + 70, n - 74),
        ]
    )
    western = curve(
        [
            (e - 5000, n + 150),
            (e - 3700, n - 60),
            (e - 2600, n - 90),
            (e - 1500, n - 240),
            (e - 560, n - 330),
            (e - 40, n - 90),
        ]
    )
    farm = (e + 1370, n - 900)
    for k, track in enumerate(
        (
            [(e + 1250, n - 380), (e + 1330, n - 640), farm],
            [farm, (e + 1000, n - 1400), (e + 620, n - 1700), (e + 500, n - 2300)],
            [
                (e - 420, n + 2400),
                (e - 500, n + 1500),
                (e - 1500, n + 1020),
                (e - 2500, n + 980),
                (e - 3700, n + 1200),
                (e - 5000, n + 1100),
            ],
            [(e + 900, n - 350), (e + 1500, n + 500), (e + 1640, n + 1500), (e + 1500, n + 2400)],
        )
    ):
        way = curve(track, 10, 370 + k)
        site.paint(site.stroke(way, 6), (196, 180, 140), 0.5)
        site.paint(site.stroke(way, 1.6), (150, 134, 98), 0.45)
    site.paint(site.stroke(road, 19), (190, 174, 136), 0.5)
    site.paint(site.stroke(road, 8.0), (222, 210, 180), 0.92)
    site.paint(site.stroke(western, 12), (190, 174, 136), 0.5)
    site.paint(site.stroke(western, 6.0), (222, 210, 180), 0.9)
    for dx, dy, wide, deep_m in ((-80, 20, 90, 60), (-66, -70, 56, 48), (50, -76, 70, 44)):
        ring = [(farm[0] + dx + a * wide / 2, farm[1] + dy + b * deep_m / 2) for a, b in SQUARE]
        site.paint(site.box((farm[0] + dx, farm[1] + dy), wide, deep_m, 90), (150, 134, 100), 0.6)
        site.darken(site.stroke([(p[0] - 2.5, p[1] - 2.0) for p in ring], 3.0), 0.4)
        site.paint(site.stroke(ring, 2.4), (138, 126, 110), 0.95)
    for dx, dy, length, width, turn, roof in (
        (0, 0, 22, 11, 75, (196, 192, 186)),
        (34, 22, 16, 8, 165, (168, 104, 84)),
        (30, -18, 14, 8, 75, (204, 198, 188)),
    ):
        site.building((farm[0] + dx, farm[1] + dy), length, width, turn, roof, 4.5, sun)
    # The range: graded strip, service road, supports, the roofed run with its louvre house and end house; the hub.
    for line, side, louvres in ((alder, -20, 1300), (birch, 20, 950), (cedar, -20, 650)):
        turn, length = bearing(line), math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1])
        strip = ndimage.gaussian_filter(site.stroke(line, 50), 2.0) * (0.75 + 0.25 * rough)
        site.paint(np.clip(strip, 0, 1), (198, 184, 144), 0.62)
        site.paint(site.stroke(beside(line, side), 6.5), (224, 212, 184), 0.92)
        site.paint(site.stroke(beside(line, side), 1.4), (190, 176, 142), 0.6)
        shadow_e, shadow_n = -math.sin(math.radians(sun)) * 5.5, -math.cos(math.radians(sun)) * 5.5
        site.darken(site.stroke([(p[0] + shadow_e, p[1] + shadow_n) for p in line], 6.0), 0.50)
        for s in range(0, int(length) + 1, 50):
            site.paint(site.box(along(line, s), 5, 12, turn), (168, 164, 158), 0.95)
        site.paint(site.stroke(line, 6.4), (216, 224, 226), 0.97)
        site.darken(site.stroke(beside(line, -1.7 if side > 0 else 1.7), 2.6), 0.13)
        site.paint(site.stroke(line, 0.8), (246, 248, 248), 0.9)
        site.paint(site.box(along(line, length, side), 46, 36, turn), (220, 208, 178), 0.8)
        site.building(along(line, length + 4), 26, 18, turn, (198, 90, 66), 6, sun)
        site.paint(site.box(along(line, louvres, side / 2), 30, 42, turn), (218, 205, 174), 0.7)
        site.building(along(line, louvres), 18, 11, turn, (228, 226, 220), 5, sun)
    site.paint(site.box((e + 22, n - 44), 150, 120, bearing(alder) + 30), (216, 202, 170), 0.8)
    for line in lines:
        site.building((e, n), 52, 30, bearing(line), (234, 234, 230), 9, sun, ridge=False)
    site.paint(site.box((e, n), 16, 16, bearing(alder) + 30), (196, 204, 210), 0.95)
    site.building((e + 72, n - 40), 34, 14, bearing(alder) + 30, (198, 90, 66), 6, sun)
    site.building((e + 40, n - 82), 26, 12, bearing(alder) + 120, (190, 196, 200), 6, sun)
    image *= (1.02 + 0.03 * noise(shape, 381, 3.0))[..., None]
    site.save(path, 382, 67)


def tank(path, lines):
    """Northern lowland: a lake, conifer forest with cuttings, fields with wheel tracks, the long hall on its lawn."""
    sun, shape = 168.0, (1600, 2300)
    (line,) = lines
    turn, length = bearing(line), math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1])
    middle = along(line, length / 2)
    site = Site(25833, middle, 1.0, shape)
    image = site.image
    y, x = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32)
    az = math.radians(turn)
    up = (x - shape[1] / 2) * math.sin(az) - (y - shape[0] / 2) * math.cos(az)  # metres along the hall from its middle
    right = (x - shape[1] / 2) * math.cos(az) + (y - shape[0] / 2) * math.sin(az)  # metres to its right (south-east)
    broad, middling, fine = noise(shape, 101, 3.0, 900), noise(shape, 102, 2.4, 260), noise(shape, 103, 1.4, 40)
    yard = ramp(-np.maximum(abs(up) - 395, abs(right - 6) - 84), -14, 4)
    lake = ramp(-(right + 590 + 80 * noise(shape, 104, 3.4, 700) + 0.10 * up), -6, 6)
    shore = ndimage.gaussian_filter(lake, 14)
    # Parcels: the nearest of scattered seeds, with distances stretched so that parcels lie along the valley.
    rng = np.random.default_rng(105)
    seeds = np.column_stack([rng.uniform(-1500, 1500, 46), rng.uniform(-500, 1300, 46)])
    bend_up, bend_right = up + 9 * noise(shape, 106, 3.6, 700, 30), right + 8 * noise(shape, 107, 3.6, 700, 30)
    distance, nearest = cKDTree(seeds * [0.62, 1.0]).query(
        np.stack([bend_up * 0.62, bend_right], -1).reshape(-1, 2), k=2
    )
    parcel = nearest[:, 0].reshape(shape)
    margin = (distance[:, 1] - distance[:, 0]).reshape(shape).astype(np.float32)
    crops = np.array(
        [
            (128, 140, 76),
            (150, 156, 88),
            (104, 126, 66),
            (174, 164, 106),
            (138, 116, 90),
            (118, 134, 70),
            (162, 160, 98),
            (94, 118, 62),
            (184, 170, 112),
            (132, 146, 80),
        ],
        np.float32,
    )
    tone = crops[rng.integers(0, len(crops), len(seeds))] * rng.uniform(0.92, 1.06, (len(seeds), 1)).astype(np.float32)
    image[:] = tone[parcel]
    angle = (rng.choice([0.0, 90.0], len(seeds)) + rng.normal(0, 7, len(seeds)))[parcel]
    across = right * np.cos(np.radians(angle)) + up * np.sin(np.radians(angle))
    sown = rng.uniform(0.2, 1.0, len(seeds)).astype(np.float32)[parcel]
    wheel = ramp(np.abs((across + 3 * middling) % 18 - 9), 7.6, 8.9)
    image *= (
        1 - 0.17 * sown * wheel + 0.035 * sown * np.sin(across * 2 * math.pi / 6) + 0.035 * middling + 0.03 * fine
    )[..., None]
    site.paint(ramp(noise(shape, 108, 2.6, 200), 0.9, 2.2), (170, 160, 112), 0.35)
    site.paint(ramp(-margin, -9, -4), (112, 122, 70), 0.85)
    site.paint(ramp(-margin, -2.4, -1.0), (74, 84, 50), 0.7)
    # Forest: everything near the lake and to the outside, with cuttings of younger trees; hedges on some parcel edges.
    wood = (
        broad * 0.62
        + 0.30 * middling
        + ramp(-right, 120, 420) * 1.5
        + ramp(right, 430, 640) * 1.5
        + ramp(abs(up), 640, 980) * 1.1
        - 1.15
    )
    wood = ramp(wood, -0.04, 0.04) * (1 - yard) * (1 - ramp(shore, 0.35, 0.6))
    cutting = ramp(noise(shape, 109, 3.4, 420) + 0.12 * middling, 0.95, 1.02)
    hedge = (
        ramp(-margin, -8, -5) * ramp(noise(shape, 110, 2.4, 260), 0.45, 0.7) * (1 - yard) * (1 - ramp(shore, 0.1, 0.4))
    )
    road = curve(
        [
            along(line, -980, 330),
            along(line, -420, 236),
            along(line, 200, 196),
            along(line, 640, 250),
            along(line, 1700, 150),
        ]
    )
    drive = curve([along(line, 120, 200), along(line, 126, 130), along(line, 150, 66)], step=6)
    lane = curve([along(line, 640, 250), along(line, 720, 60), along(line, 800, -300), along(line, 1200, -520)], 5, 111)
    forest_road = curve(
        [
            along(line, -420, 236),
            along(line, -450, 20),
            along(line, -300, -230),
            along(line, 260, -330),
            along(line, 790, -260),
        ],
        8,
        112,
    )
    farm_track = curve(
        [along(line, 40, 200), along(line, -30, 420), along(line, 40, 700), along(line, -60, 1000)], 5, 113
    )
    clear = np.maximum.reduce(
        [
            site.stroke(road, 26),
            site.stroke(drive, 16),
            site.stroke(lane, 12),
            site.stroke(forest_road, 9),
            site.stroke(farm_track, 10),
        ]
    )
    floor = np.array((70, 78, 48), np.float32) * (1 + 0.08 * fine[..., None])
    mix(image, floor, wood)
    mix(
        image,
        np.array((134, 128, 88), np.float32) * (1 + 0.10 * fine[..., None] + 0.08 * middling[..., None]),
        wood * cutting * 0.85,
    )
    mature = np.clip(wood * (1 - cutting) - clear, 0, 1)
    crowns = domes(shape, 114, 3.1, (1.5, 3.1), mature * (0.92 + 0.08 * ramp(middling, -1, 1)))
    young = domes(shape, 115, 5.0, (0.7, 1.6), np.clip(wood * cutting - clear, 0, 1) * ramp(fine + middling, -1.4, 1.2))
    leafy_place = np.clip(
        np.maximum(hedge, ramp(shore, 0.02, 0.2) * ramp(-shore, -0.42, -0.3) * ramp(middling, -0.6, 0.4))
        - clear
        - lake,
        0,
        1,
    )
    leafy = domes(shape, 116, 5.4, (2.2, 4.6), leafy_place * 0.8)
    conifer = np.array((52, 70, 44), np.float32) + 9 * ramp(noise(shape, 117, 1.8, 120), -1, 1.6)[..., None] * np.array(
        (1.6, 1.2, 0.3), np.float32
    )
    for trees, colour, reach in (
        (young, np.array((86, 104, 56), np.float32), 2),
        (crowns, conifer, 9),
        (leafy, np.array((96, 120, 58), np.float32), 8),
    ):
        cover = np.clip(ndimage.gaussian_filter(trees, 0.45) * 1.0, 0, 1)
        shadow = ndimage.gaussian_filter(
            cast(ndimage.gaussian_filter(np.clip(trees - 0.6, 0, 1), 0.8), sun, reach), 0.7
        )
        site.darken(np.clip(shadow - 0.7 * cover, 0, 1), 0.50)
        mix(image, colour * np.clip(0.25 + 0.75 * shade(trees, sun, 48), 0.42, 1.5)[..., None], cover)
    water = np.array((44, 62, 70), np.float32) + ramp(1 - shore, 0.0, 0.55)[..., None] * np.array(
        (22, 26, 12), np.float32
    )
    water = water * (1 + 0.02 * fine + 0.035 * noise(shape, 118, 2.2, 500))[..., None]
    mix(image, water, lake)
    reeds = ramp(shore, 0.42, 0.5) * ramp(-shore, -0.72, -0.58) * ramp(middling, 0.2, 0.9)
    mix(image, np.array((122, 126, 78), np.float32) * (1 + 0.12 * fine[..., None]), reeds * 0.8)
    # Roads.
    for way, shoulder, width, colour in (
        (farm_track, 7, 3.2, (186, 174, 146)),
        (forest_road, 7, 4, (190, 180, 156)),
        (lane, 8, 4.5, (184, 176, 158)),
    ):
        site.paint(site.stroke(way, shoulder), (136, 136, 92), 0.7)
        site.paint(site.stroke(way, width), colour, 0.92)
    site.paint(site.stroke(farm_track, 1.1), (134, 136, 88), 0.7)
    # The plot: lawn in mowing stripes, hall, dock and beach houses, workshops, car park.
    lawn = (
        np.array((126, 142, 78), np.float32)
        * (1 + 0.035 * fine + 0.03 * middling + 0.025 * np.sign(np.sin(right * 2 * math.pi / 9)))[..., None]
    )
    mix(image, lawn, yard)
    site.paint(site.stroke(road, 12), (150, 148, 116), 0.8)
    site.paint(site.stroke(road, 7), (142, 142, 140), 1.0)
    site.paint(site.stroke(road, 0.35, dash=(6, 9)), (226, 226, 220), 0.9)
    asphalt = (134, 135, 134)
    site.paint(site.stroke(drive, 6.5), asphalt)
    ring = [along(line, -46, 48), along(line, 668, 48)]
    site.paint(site.stroke(ring, 6), asphalt)
    site.paint(
        site.stroke([along(line, 668, 48), along(line, 668, -44), along(line, -46, -44), along(line, -46, 48)], 5),
        (168, 162, 148),
    )
    park = along(line, 190, 78)
    site.paint(site.box(park, 118, 42, turn), asphalt)
    site.paint(site.box(along(line, 20, 62), 60, 34, turn), (150, 150, 147))
    cars = np.array(
        [(216, 216, 214), (60, 62, 68), (150, 40, 36), (58, 80, 120), (176, 178, 180), (236, 236, 234), (96, 98, 100)],
        float,
    )
    for row in (62.5, 73.0, 83.0, 93.5):
        for bay in np.arange(135, 246, 2.7):
            site.paint(site.box(along(line, bay + 1.35, row), 0.25, 5, turn), (196, 196, 190), 0.5)
            if rng.random() < 0.46:
                place = along(line, bay, row + rng.normal(0, 0.2))
                site.darken(site.box((place[0], place[1] + 0.9), 1.9, 4.5, turn), 0.4)
                site.paint(site.box(place, 1.8, 4.3, turn), cars[rng.integers(len(cars))])
    hall, light = 27.0, (198, 202, 204)
    site.building(along(line, length / 2), length + 16, hall, turn, light, 11, sun)
    for s in np.arange(0, length + 1, 10.0):  # roof joints and skylights
        site.paint(site.box(along(line, s), 0.5, hall, turn), (150, 154, 158), 0.55)
    for side in (-6.6, 6.6):
        for s in np.arange(5, length, 10.0):
            site.paint(
                site.box(along(line, s, side), 6.4, 1.7, turn), (226, 236, 240) if side < 0 else (214, 224, 230), 0.9
            )
    site.paint(site.stroke([along(line, -8), along(line, length + 8)], 0.9), (236, 238, 238), 0.9)
    for s in range(15, int(length), 30):
        site.darken(site.box(along(line, s + 0.8, -0.8), 2.6, 2.6, turn), 0.3)
        site.paint(site.box(along(line, s), 2.4, 2.4, turn), (168, 172, 176))
    site.building(along(line, -30, 2), 42, 52, turn, (176, 184, 192), 15, sun)
    site.building(along(line, length + 26, 0), 36, 38, turn, (186, 190, 192), 12, sun, ridge=False)
    site.building(along(line, 96, 28), 70, 22, turn, (122, 86, 72), 9, sun)
    site.building(along(line, 330, 26), 40, 16, turn, (206, 206, 202), 7, sun, ridge=False)
    site.building(along(line, 480, -34), 30, 14, turn, (170, 164, 156), 6, sun)
    fence = [
        along(line, -84, -76),
        along(line, 704, -76),
        along(line, 704, 106),
        along(line, -84, 106),
        along(line, -84, -76),
    ]
    site.darken(site.stroke(fence, 0.8), 0.45)
    avenue = np.zeros(shape, np.float32)
    for s in range(-70, 700, 13):
        for side in (112,):
            avenue = np.maximum(avenue, 0.9 * site.box(along(line, s, side), 2, 2, turn))
    trees = domes(shape, 119, 1.4, (2.4, 3.8), (avenue > 0.3) * 0.34)
    site.darken(np.clip(cast(np.clip(trees, 0, 1), sun, 7) - np.clip(trees, 0, 1), 0, 1), 0.5)
    mix(
        image,
        np.array((92, 116, 56), np.float32) * np.clip(shade(trees, sun, 48), 0.45, 1.5)[..., None],
        np.clip(trees * 1.1, 0, 1),
    )
    # Farmsteads and cottages by the road.
    for k, (s, offset, angle) in enumerate(
        (
            (-640, 250, 10),
            (-610, 226, 100),
            (-660, 210, 10),
            (560, 300, 25),
            (590, 282, 115),
            (40, 440, 5),
            (66, 420, 95),
            (14, 414, 5),
            (830, 226, 40),
            (900, 262, 20),
            (-350, 280, 15),
        )
    ):
        roof = ((150, 62, 48), (112, 106, 102), (164, 78, 58), (92, 90, 90))[k % 4]
        site.paint(site.box(along(line, s, offset), 44, 40, turn), (132, 140, 84), 0.45)
        site.building(along(line, s, offset), 22 - k % 3 * 5, 9.5, turn + angle, roof, 6, sun)
    image *= (1.0 + 0.03 * broad)[..., None]
    site.save(path, 121, 72)


def track(path, lines):
    """Desert of red sand ridges, clay pans and a creek, crossed by a test track with pads and a service road."""
    sun, shape, step = 40.0, (1260, 2440), 8
    (line,) = lines
    turn, length = bearing(line), math.hypot(line[1][0] - line[0][0], line[1][1] - line[0][1])
    site = Site(7853, along(line, length / 2, 40), 2.75, shape)
    image = site.image
    broad, rough, fine = noise(shape, 201, 3.0, 900), noise(shape, 202, 2.2, 220), noise(shape, 203, 1.2, 30)
    y, x = np.mgrid[0 : shape[0], 0 : shape[1]].astype(np.float32)
    # Sand ridges run north-north-west; where their spacing changes they fork, as phase noise makes them do.
    ridge_az = math.radians(338)
    across = x * math.cos(ridge_az) + y * math.sin(ridge_az)
    lengthwise = x * math.sin(ridge_az) - y * math.cos(ridge_az)
    slow = ndimage.zoom(noise((shape[0] // 8 + 2, shape[1] // 8 + 2), 204, 4.4, 110, 14), 8, order=3)[
        : shape[0], : shape[1]
    ]
    phase = across / 104.0 + 0.62 * slow + 0.035 * noise(shape, 217, 3.0, 140, 14)
    wave = np.sin(2 * math.pi * phase)
    crest = np.clip(wave * 0.5 + 0.5, 0, 1) ** 2.2 * ramp(noise(shape, 205, 3.2, 700, 22) + 0.25 * wave, -1.0, 0.6)
    near = ndimage.gaussian_filter(site.stroke(line, 240)[::4, ::4], 11)
    near = ndimage.zoom(near, 4, order=1)[: shape[0], : shape[1]]
    crest *= 1 - 0.8 * near
    image[:] = (178, 98, 62)
    site.paint(ramp(broad, -1.3, 1.2), (162, 88, 58), 0.9)
    site.paint(ramp(rough + 0.5 * broad, 0.0, 1.8), (192, 122, 82), 0.8)
    site.paint(ramp(noise(shape, 206, 2.0, 320), 0.2, 1.9), (150, 104, 70), 0.6)
    swale = ramp(-wave, 0.1, 0.95) * ramp(rough, -1.6, 0.8)
    site.paint(swale, (146, 106, 72), 0.50)
    # Old fire scars: paler where the grass burnt, with ragged edges drawn out by the wind.
    scar = ramp(noise(shape, 207, 2.9, 520) + 0.15 * rough + 0.08 * fine, 0.75, 0.86)
    site.paint(scar, (196, 112, 70), 0.55)
    # Banded grove: thin lines of trees along the contour of the gentle slopes.
    bands = np.sin(2 * math.pi * (lengthwise / 24 + 1.5 * slow + 0.55 * noise(shape, 208, 2.4, 120)))
    grove = ramp(bands, 0.0, 0.9) * ramp(noise(shape, 209, 3.0, 600) - 0.5 * crest, 0.2, 1.2) * (1 - 0.7 * scar)
    site.paint(grove, (118, 92, 62), 0.6)
    height, area, receiver = erode(shape, step, 211, (0.03, 0.06), bumps=0.8, rounds=24)
    stream = gullies(shape, step, area, receiver, 900, 1.5)
    stream = warp(stream, 212, 9, 240)
    image *= (0.45 + 0.55 * shade(crest * 11 + 0.22 * rough + 0.05 * fine, sun, 38))[..., None]
    site.paint(ramp(crest, 0.62, 0.95), (206, 120, 74), 0.6)
    flood = np.clip(ndimage.gaussian_filter(stream, 9) * 2.6, 0, 1)
    site.paint(flood * ramp(rough, -1.5, 0.8), (150, 112, 78), 0.6)
    # Clay pans: one lies under the track where it has heaved.
    pan = np.zeros(shape, np.float32)
    edge = noise(shape, 213, 2.6, 200)
    for place, long_m, wide_m, angle in (
        (along(line, 2715, 25), 330, 190, 20),
        (along(line, 1250, 840), 240, 130, 60),
        (along(line, 4420, -760), 380, 170, 100),
        (along(line, 3560, 960), 160, 110, 0),
        (along(line, 420, -900), 200, 90, 50),
    ):
        ((row, column),) = site.at([place])
        az = math.radians(angle)
        u, v = (
            (x - column) * math.sin(az) - (y - row) * math.cos(az),
            (x - column) * math.cos(az) + (y - row) * math.sin(az),
        )
        r = np.hypot(u * site.pixel / long_m, v * site.pixel / wide_m)
        pan = np.maximum(pan, ramp(1 - r + 0.13 * edge, 0.0, 0.10))
    rim = ramp(ndimage.gaussian_filter(pan, 6), 0.06, 0.4) * (1 - pan)
    site.paint(rim, (142, 104, 72), 0.55)
    inner = ndimage.gaussian_filter(pan, 16)
    site.paint(pan, (214, 172, 138), 0.92)
    site.paint(pan * ramp(inner + 0.10 * edge, 0.72, 0.98), (226, 196, 166), 0.8)
    site.paint(np.clip(stream * 1.2, 0, 1) * (1 - pan), (220, 178, 138), 0.85)
    # Plants: spinifex dots, mulga in the groves, gums along the creek.
    spinifex = domes(
        shape,
        214,
        4.6,
        (0.55, 1.15),
        (0.20 + 0.45 * ramp(rough + 0.4 * slow, -1, 1.4))
        * (1 - pan)
        * (1 - 0.8 * scar)
        * (1 - 0.6 * ramp(crest, 0.5, 0.9)),
    )
    mulga = domes(
        shape,
        215,
        4.4,
        (0.8, 1.9),
        np.clip(0.62 * grove + 0.16 * swale + 0.55 * rim, 0, 1) * (1 - pan) * ramp(fine + rough, -2.2, 0.8),
    )
    gums = domes(
        shape, 216, 4.0, (1.1, 2.8), np.clip(ndimage.gaussian_filter(stream, 5) * 2.6 - 0.7 * stream, 0, 1) * 0.75
    )
    for crowns, colour, opacity, reach in (
        (spinifex, (138, 112, 72), 0.65, 0.8),
        (mulga, (82, 82, 54), 0.88, 1.8),
        (gums, (86, 98, 60), 0.95, 2.4),
    ):
        cover = np.clip(crowns * 1.25, 0, 1)
        site.darken(np.clip(cast(cover, sun, reach) - cover, 0, 1), 0.34)
        mix(
            image, np.array(colour, np.float32) * np.clip(shade(crowns, sun, 45), 0.55, 1.4)[..., None], cover * opacity
        )
    # Roads.
    station_road = curve([along(line, -900, 900), along(line, -520, 420), along(line, -160, 120), along(line, -60, 62)])
    outer = curve(
        [
            along(line, -520, 420),
            along(line, 700, 560),
            along(line, 2100, 500),
            along(line, 3500, 640),
            along(line, 5000, 480),
            along(line, 6200, 560),
        ],
        14,
        221,
    )
    fire_break = curve([along(line, 1500, -1700), along(line, 1620, -700), along(line, 1580, -40)], 6, 222)
    for way, width in ((outer, 7.0), (fire_break, 5.0), (station_road, 8.5)):
        site.paint(site.stroke(way, width * 2), (196, 126, 88), 0.45)
        site.paint(site.stroke(way, width), (226, 164, 122), 0.88)
    power = [along(line, -1500, -150), along(line, 6800, -150)]
    site.paint(site.stroke(power, 12), (190, 116, 76), 0.30)
    site.paint(site.stroke(power, 1.6), (214, 150, 108), 0.55)
    # The track: graded strip, ballast, two rails on a slab, service road, camera pads, breech and arrest ends.
    run = [along(line, -40), along(line, length + 60)]
    site.paint(
        np.clip(ndimage.gaussian_filter(site.stroke(run, 74), 2) * (0.8 + 0.2 * rough), 0, 1), (202, 136, 98), 0.62
    )
    site.paint(site.stroke(beside(run, 24), 8), (230, 172, 132), 0.92)
    site.paint(site.stroke(beside(run, 24), 1.5), (200, 138, 100), 0.6)
    lean = [(p[0] - math.sin(math.radians(sun)) * 4.5, p[1] - math.cos(math.radians(sun)) * 4.5) for p in run]
    site.darken(site.stroke(lean, 4), 0.34)
    site.paint(site.stroke(run, 9.5), (206, 190, 172), 0.92)
    site.paint(site.stroke(run, 4.6), (236, 230, 220), 0.95)
    site.darken(site.stroke(run, 1.2), 0.42)
    for feet in (4000, 8000, 12000, 16000):
        s = (feet - 1200) * 0.3048
        site.paint(site.stroke([along(line, s, 24), along(line, s, 96)], 6), (224, 166, 126), 0.9)
        site.paint(site.box(along(line, s, 104), 44, 36, turn), (224, 182, 146), 0.9)
        site.building(along(line, s, 104), 14, 11, turn, (232, 228, 220), 5, sun)
    for s in np.arange(0, length, 152.4):
        site.darken(site.box(along(line, s, 11), 5, 5, turn), 0.45)
    site.paint(site.box(along(line, -90, 40), 190, 170, turn), (222, 168, 130), 0.85)
    site.building(along(line, -70), 70, 26, turn, (230, 228, 222), 10, sun)
    site.building(along(line, -120, 62), 60, 30, turn + 90, (176, 182, 188), 9, sun)
    site.building(along(line, -60, 84), 34, 16, turn, (214, 212, 208), 6, sun)
    site.building(along(line, -150, 6), 24, 14, turn, (196, 110, 84), 5, sun)
    site.paint(site.box(along(line, length + 90, 10), 130, 110, turn), (222, 168, 130), 0.85)
    site.paint(site.box(along(line, length + 80, 0), 90, 14, turn), (96, 122, 122), 0.9)
    site.building(along(line, length + 130, 40), 28, 16, turn, (226, 224, 218), 6, sun)
    image *= (1.0 + 0.03 * noise(shape, 231, 3.0))[..., None]
    site.save(path, 232, 72)


DRAWERS = {"range": light_range, "tank": tank, "track": track}


def draw_site(name, path, lines):
    """Write the imagery of scenario ``name`` to ``path``; ``lines`` are the vertices of its axes in map coordinates."""
    DRAWERS[name](path, lines)
