"""What the imagery of the sample scenarios is drawn with: noise, relief, crowns, shadows, roads and buildings.

Everything is computed, no photograph is used. Relief is a small stream-power erosion model (so that gullies branch and
join as they do in nature), ground cover is fractal noise, crowns are domes around scattered points, lit by the same sun
as the relief; roads, buildings and the structures are drawn with exact edge coverage.
"""

import heapq
import math

import numpy as np
from osgeo import gdal, osr
from scipy import ndimage
from scipy.interpolate import PchipInterpolator

gdal.UseExceptions()


# -------------------------------------------------------------------------------------------------------- fields


def noise(shape, seed, beta=2.0, longest=None, shortest=None):
    """Fractal noise of spectrum 1/f^beta, mean 0 and standard deviation 1; wavelengths in pixels."""
    rng = np.random.default_rng(seed)
    fy, fx = np.fft.fftfreq(shape[0])[:, None], np.fft.rfftfreq(shape[1])[None, :]
    f = np.hypot(fy, fx)
    f[0, 0] = 1.0
    gain = f ** (-beta / 2)
    if longest:
        gain *= 1 - np.exp(-((f * longest) ** 2))
    if shortest:
        gain *= np.exp(-((f * shortest) ** 2))
    gain[0, 0] = 0.0
    field = np.fft.irfft2(np.fft.rfft2(rng.standard_normal(shape)) * gain, s=shape)
    return ((field - field.mean()) / field.std()).astype(np.float32)


def ramp(x, low, high):
    """0 below ``low``, 1 above ``high``, smooth between."""
    t = np.clip((x - low) / (high - low), 0, 1)
    return t * t * (3 - 2 * t)


def mix(image, colour, weight):
    """Blend ``colour`` (three numbers or a picture) into ``image`` in place."""
    colour = np.asarray(colour, dtype=np.float32)
    image += (colour - image) * weight[..., None]


def shade(height, azimuth, altitude=38.0, exaggeration=1.0):
    """Light on a surface (1 = level ground); ``height`` in pixels."""
    gy, gx = np.gradient(height * exaggeration)
    az, alt = math.radians(azimuth), math.radians(altitude)
    light = (-gx * math.sin(az) + gy * math.cos(az)) * math.cos(alt) + math.sin(alt)
    return np.clip(light / np.sqrt(1 + gx * gx + gy * gy) / math.sin(alt), 0, 2.2).astype(np.float32)


def fill(height):
    """``height`` with every hollow filled to its rim and a hair more, so that all water reaches the edge."""
    rows, columns = height.shape
    flat, seen = height.ravel().tolist(), bytearray(rows * columns)
    edge = [r * columns + c for r in range(rows) for c in range(columns) if r in (0, rows - 1) or c in (0, columns - 1)]
    heap = [(flat[cell], cell) for cell in edge]
    for cell in edge:
        seen[cell] = 1
    heapq.heapify(heap)
    around = (-columns - 1, -columns, -columns + 1, -1, 1, columns - 1, columns, columns + 1)
    while heap:
        level, cell = heapq.heappop(heap)
        column = cell % columns
        for step in around:
            other = cell + step
            if 0 <= other < rows * columns and abs(other % columns - column) <= 1 and not seen[other]:
                seen[other] = 1
                flat[other] = max(flat[other], level + 1e-4)
                heapq.heappush(heap, (flat[other], other))
    return np.array(flat).reshape(rows, columns)


def erode(shape, step, seed, tilt, bumps=1.2, rounds=36, strength=0.05):
    """Relief and catchment area of an eroded tableland, on a grid ``step`` times coarser than ``shape``.

    Implicit stream-power erosion: each cell drains to its steepest neighbour, water is added up from the top down,
    and every cell is cut towards its receiver by strength * sqrt(area), from the bottom up.
    Returns height, area and receiver (flat index).
    """
    rows, columns = shape[0] // step + 2, shape[1] // step + 2
    y, x = np.mgrid[0:rows, 0:columns]
    height = (
        tilt[0] * x
        + tilt[1] * y
        + bumps * noise((rows, columns), seed, 2.8, longest=110)
        + 0.12 * noise((rows, columns), seed + 1, 1.0)
    ).astype(np.float64)
    index = np.arange(rows * columns).reshape(rows, columns)
    offsets = [(i, j) for i in (-1, 0, 1) for j in (-1, 0, 1) if i or j]
    for turn in range(rounds):
        if turn % 6 == 0 or turn == rounds - 1:
            height = fill(height)
        pad, pad_index = np.pad(height, 1, constant_values=1e9), np.pad(index, 1)
        best, receiver = np.zeros_like(height), index.copy()
        for i, j in offsets:
            fall = (height - pad[1 + i : 1 + i + rows, 1 + j : 1 + j + columns]) / math.hypot(i, j)
            better = fall > best
            best[better] = fall[better]
            receiver[better] = pad_index[1 + i : 1 + i + rows, 1 + j : 1 + j + columns][better]
        order = np.argsort(height, axis=None).tolist()
        to, area = receiver.ravel().tolist(), [1.0] * (rows * columns)
        for cell in reversed(order):
            if to[cell] != cell:
                area[to[cell]] += area[cell]
        flat = (height + 0.03).ravel().tolist()
        for cell in order:
            if to[cell] != cell:
                cut = strength * math.sqrt(area[cell])
                flat[cell] = (flat[cell] + cut * flat[to[cell]]) / (1 + cut)
        height = np.array(flat).reshape(rows, columns)
        height = height + 0.06 * ndimage.laplace(height)
    return height, np.array(area).reshape(rows, columns), receiver


def enlarge(field, shape, step):
    return ndimage.zoom(field, step, order=3, mode="nearest", grid_mode=True)[: shape[0], : shape[1]].astype(np.float32)


def warp(field, seed, amount, longest):
    """Shift a picture by smooth noise: takes the grid out of anything drawn on one."""
    y, x = np.mgrid[0 : field.shape[0], 0 : field.shape[1]].astype(np.float32)
    y += amount * noise(field.shape, seed, 2.4, longest, longest / 12)
    x += amount * noise(field.shape, seed + 1, 2.4, longest, longest / 12)
    return ndimage.map_coordinates(field, [y, x], order=1, mode="nearest")


def domes(shape, seed, spacing, radius, density=None):
    """Height (px) of crowns around scattered points, one point per ``spacing``^2 px; ``density`` 0..1 thins them out.

    ``radius`` is (smallest, largest) in pixels. Returns height, 0 between crowns.
    """
    rng = np.random.default_rng(seed)
    count = int(shape[0] * shape[1] / spacing**2)
    points = rng.random((count, 2)) * shape
    if density is not None:
        keep = rng.random(count) < density[points[:, 0].astype(int), points[:, 1].astype(int)]
        points = points[keep]
    radii = radius[0] + (radius[1] - radius[0]) * rng.random(len(points)) ** 2
    height = np.zeros(shape, np.float32)
    reach = math.ceil(radius[1])
    base = np.floor(points).astype(int)
    for i in range(-reach, reach + 1):
        for j in range(-reach, reach + 1):
            row, column = base[:, 0] + i, base[:, 1] + j
            d2 = (row + 0.5 - points[:, 0]) ** 2 + (column + 0.5 - points[:, 1]) ** 2
            dome = np.sqrt(np.maximum(radii**2 - d2, 0))
            inside = (dome > 0) & (row >= 0) & (row < shape[0]) & (column >= 0) & (column < shape[1])
            np.maximum.at(height, (row[inside], column[inside]), dome[inside].astype(np.float32))
    return height


def cast(mask, azimuth, length):
    """Shadow of ``mask`` (0..1): smeared ``length`` pixels away from the sun at ``azimuth``."""
    dy, dx = math.cos(math.radians(azimuth)), -math.sin(math.radians(azimuth))
    out = np.zeros_like(mask)
    for k in np.arange(0.5, length + 0.01, 0.75):
        out = np.maximum(out, ndimage.shift(mask, (dy * k, dx * k), order=1, mode="nearest", prefilter=False))
    return out


# ------------------------------------------------------------------------------------------------------- drawing


class Site:
    """A picture under construction: colour 0..255, and its place on the ground."""

    def __init__(self, epsg, centre, pixel, shape):
        self.epsg, self.pixel, self.shape = epsg, pixel, shape
        self.west, self.north = centre[0] - shape[1] * pixel / 2, centre[1] + shape[0] * pixel / 2
        self.image = np.zeros(shape + (3,), np.float32)

    def at(self, points):
        """Rows and columns (pixels, as floats) of map points."""
        points = np.asarray(points, float)
        return np.column_stack([(self.north - points[:, 1]) / self.pixel, (points[:, 0] - self.west) / self.pixel])

    def stroke(self, points, width, dash=None):
        """Coverage of a line through map points, ``width`` in metres; ``dash`` (on, off) in metres."""
        cover, half = np.zeros(self.shape, np.float32), width / self.pixel / 2
        faint = min(1.0, 2 * half)  # a line thinner than a pixel is paler, not wider
        half = max(half, 0.5)
        path, run = self.at(points), 0.0
        for (r0, c0), (r1, c1) in zip(path[:-1], path[1:]):
            whole = math.hypot(r1 - r0, c1 - c0)
            pieces = max(1, int(whole / 60))
            for k in range(pieces):
                a = np.array([r0 + (r1 - r0) * k / pieces, c0 + (c1 - c0) * k / pieces])
                b = np.array([r0 + (r1 - r0) * (k + 1) / pieces, c0 + (c1 - c0) * (k + 1) / pieces])
                low = np.maximum(np.floor(np.minimum(a, b) - half - 2).astype(int), 0)
                high = np.minimum(np.ceil(np.maximum(a, b) + half + 2).astype(int), self.shape)
                if (high <= low).any():
                    continue
                y, x = np.mgrid[low[0] : high[0], low[1] : high[1]] + 0.5
                along = ((y - a[0]) * (b[0] - a[0]) + (x - a[1]) * (b[1] - a[1])) / max(((b - a) ** 2).sum(), 1e-9)
                t = np.clip(along, 0, 1)
                distance = np.hypot(y - a[0] - t * (b[0] - a[0]), x - a[1] - t * (b[1] - a[1]))
                value = np.clip(half + 0.5 - distance, 0, 1) * faint
                if dash:
                    place = (run + along * math.hypot(*(b - a))) * self.pixel % sum(dash)
                    value = value * (place < dash[0])
                window = cover[low[0] : high[0], low[1] : high[1]]
                np.maximum(window, value, out=window)
                run += math.hypot(*(b - a))
        return cover

    def box(self, centre, length, width, azimuth):
        """Coverage of a rectangle, ``length`` metres towards ``azimuth``."""
        ((row, column),) = self.at([centre])
        reach = math.hypot(length, width) / 2 / self.pixel + 2
        r0, r1 = max(int(row - reach), 0), min(int(row + reach) + 1, self.shape[0])
        c0, c1 = max(int(column - reach), 0), min(int(column + reach) + 1, self.shape[1])
        cover = np.zeros(self.shape, np.float32)
        if r1 <= r0 or c1 <= c0:
            return cover
        y, x = np.mgrid[r0:r1, c0:c1] + 0.5
        az = math.radians(azimuth)
        along = (x - column) * math.sin(az) - (y - row) * math.cos(az)
        across = (x - column) * math.cos(az) + (y - row) * math.sin(az)
        cover[r0:r1, c0:c1] = np.clip(length / 2 / self.pixel + 0.5 - abs(along), 0, 1) * np.clip(
            width / 2 / self.pixel + 0.5 - abs(across), 0, 1
        )
        return cover

    def paint(self, cover, colour, opacity=1.0):
        mix(self.image, colour, cover * opacity)

    def darken(self, cover, amount):
        self.image *= (1 - cover * amount)[..., None] * np.array([1, 1, 1]) + (cover * amount)[..., None] * [
            0.0,
            0.02,
            0.07,
        ]

    def building(self, centre, length, width, azimuth, roof, height, sun, ridge=True):
        """A building with a shadow and a two-sided roof; metres."""
        body = self.box(centre, length, width, azimuth)
        window = ndimage.find_objects((body > 0).astype(int))
        if not window:
            return
        margin = int(3 * height / self.pixel) + 4
        rows, columns = (slice(max(s.start - margin, 0), s.stop + margin) for s in window[0])
        shadow = np.zeros_like(body)
        shadow[rows, columns] = cast(body[rows, columns], sun, height / self.pixel * 1.25)
        self.darken(np.maximum(shadow - body, 0), 0.62)
        self.paint(body, roof)
        if ridge:
            az = math.radians(azimuth + 90)
            side = 1 if math.cos(math.radians(azimuth + 90 - sun)) < 0 else -1
            lee = (centre[0] + side * math.sin(az) * width / 4, centre[1] + side * math.cos(az) * width / 4)
            self.darken(self.box(lee, length, width / 2, azimuth), 0.20)

    def save(self, path, seed, quality):
        grain = np.random.default_rng(seed).normal(0, 1.6, self.shape).astype(np.float32)
        data = np.clip(self.image + grain[..., None], 0, 255).astype(np.uint8)
        memory = gdal.GetDriverByName("MEM").Create("", self.shape[1], self.shape[0], 3, gdal.GDT_Byte)
        reference = osr.SpatialReference()
        reference.ImportFromEPSG(self.epsg)
        memory.SetProjection(reference.ExportToWkt())
        memory.SetGeoTransform((self.west, self.pixel, 0, self.north, 0, -self.pixel))
        for band in range(3):
            memory.GetRasterBand(band + 1).WriteArray(data[..., band])
            # Kept inside the picture: the desktop would otherwise write them into a file beside it.
            values = data[..., band]
            for key, value in (
                ("MINIMUM", values.min()),
                ("MAXIMUM", values.max()),
                ("MEAN", values.mean()),
                ("STDDEV", values.std()),
            ):
                memory.GetRasterBand(band + 1).SetMetadataItem(f"STATISTICS_{key}", f"{value:.4f}")
        path.unlink(missing_ok=True)
        out = gdal.GetDriverByName("GTiff").CreateCopy(
            str(path), memory, options=["COMPRESS=JPEG", "PHOTOMETRIC=YCBCR", f"JPEG_QUALITY={quality}", "TILED=YES"]
        )
        out = None
        out = gdal.Open(str(path), gdal.GA_Update)
        with_quality = {
            "COMPRESS_OVERVIEW": "JPEG",
            "PHOTOMETRIC_OVERVIEW": "YCBCR",
            "JPEG_QUALITY_OVERVIEW": str(quality),
        }
        for key, value in with_quality.items():
            gdal.SetConfigOption(key, value)
        out.BuildOverviews("AVERAGE", [2, 4, 8])
        out = None
        for key in with_quality:
            gdal.SetConfigOption(key, None)


def curve(points, wobble=0.0, seed=0, step=20.0):
    """Map points on a smooth line through ``points``; ``wobble`` metres of wandering, as a track wanders."""
    points = np.asarray(points, float)
    t = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(points, axis=0).T))])
    s = np.linspace(0, t[-1], max(int(t[-1] / step), 2))
    smooth = np.column_stack([PchipInterpolator(t, points[:, k])(s) for k in (0, 1)])
    if wobble:
        rng = np.random.default_rng(seed)
        sway = ndimage.gaussian_filter1d(rng.standard_normal(len(s)), 6)
        smooth += wobble * (sway / max(sway.std(), 1e-9))[:, None] * np.array([0.7, 0.7])
    return smooth


def beside(line, offset):
    """``line`` (two map points) moved ``offset`` metres to the right."""
    (e0, n0), (e1, n1) = line
    d = math.hypot(e1 - e0, n1 - n0)
    de, dn = (n1 - n0) / d * offset, -(e1 - e0) / d * offset
    return [(e0 + de, n0 + dn), (e1 + de, n1 + dn)]


def along(line, distance, offset=0.0):
    """Map point ``distance`` metres up the line, ``offset`` to the right."""
    (e0, n0), (e1, n1) = beside(line, offset)
    d = math.hypot(e1 - e0, n1 - n0)
    return e0 + (e1 - e0) * distance / d, n0 + (n1 - n0) * distance / d


def bearing(line):
    (e0, n0), (e1, n1) = line
    return math.degrees(math.atan2(e1 - e0, n1 - n0)) % 360


def gullies(shape, step, area, receiver, threshold, width):
    """Coverage of the streams where ``area`` exceeds ``threshold`` cells, ``width`` pixels at the threshold."""
    columns = area.shape[1]
    cover = np.zeros(shape, np.float32)
    cells = np.flatnonzero(area.ravel() > threshold)
    for cell in cells:
        to = receiver.ravel()[cell]
        if to == cell:
            continue
        a, b = divmod(int(cell), columns), divmod(int(to), columns)
        w = width * (area.ravel()[cell] / threshold) ** 0.38
        (r0, c0), (r1, c1) = ((p[0] * step + step / 2, p[1] * step + step / 2) for p in (a, b))
        low = max(int(min(r0, r1) - w - 2), 0), max(int(min(c0, c1) - w - 2), 0)
        high = min(int(max(r0, r1) + w + 3), shape[0]), min(int(max(c0, c1) + w + 3), shape[1])
        if high[0] <= low[0] or high[1] <= low[1]:
            continue
        y, x = np.mgrid[low[0] : high[0], low[1] : high[1]] + 0.5
        t = np.clip(((y - r0) * (r1 - r0) + (x - c0) * (c1 - c0)) / max((r1 - r0) ** 2 + (c1 - c0) ** 2, 1e-9), 0, 1)
        d = np.hypot(y - r0 - t * (r1 - r0), x - c0 - t * (c1 - c0))
        window = cover[low[0] : high[0], low[1] : high[1]]
        np.maximum(window, np.clip(w / 2 + 0.5 - d, 0, 1), out=window)
    return ndimage.gaussian_filter(cover, 0.6)
