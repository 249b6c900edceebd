"""Layers compared with their inputs slice by slice: the same as in one go, and nothing is held while others need it."""

import pytest

pytest.importorskip("qgis.core")

NUMBER = 5_001  # rows, in two whole slices and the beginning of a third


@pytest.fixture(scope="module")
def layer(host):
    from qgis.core import QgsFeature, QgsGeometry, QgsPointXY, QgsVectorLayer

    made = QgsVectorLayer("Point?crs=EPSG:32734&field=name:string&field=height:double", "many", "memory")
    features = []
    for k in range(NUMBER):
        feature = QgsFeature(made.fields())
        feature.setAttributes([f"p{k}", 0.25 * k])
        feature.setGeometry(QgsGeometry.fromPointXY(QgsPointXY(500000.0 + k, 6500000.0)))
        features.append(feature)
    assert made.dataProvider().addFeatures(features)[0]
    return made


@pytest.fixture
def source(layer):
    from qgis.core import QgsProcessingContext, QgsProcessingFeatureSource

    context = QgsProcessingContext()
    yield QgsProcessingFeatureSource(layer, context)


def test_slices_give_way_and_give_the_same(source):
    from tautline.algorithms.boundary.slices import ROWS, finished
    from tautline.algorithms.boundary.tables import read_table, table_in_slices

    work, slices = table_in_slices(source, {"h": 1}, {"n": 0}, None, geometry=True), 0
    while True:
        try:
            next(work)
        except StopIteration as end:
            table = end.value
            break
        slices += 1
    assert slices >= NUMBER // ROWS
    whole = read_table(source, {"h": 1}, {"n": 0}, None, geometry=True)
    assert table.read == whole.read and table.columns["n"] == whole.columns["n"] and table.features is None
    assert table.columns["h"].tolist() == [0.25 * k for k in range(NUMBER)]
    assert len(whole.features) == NUMBER
    again = table_in_slices(source, {"h": 1}, {"n": 0}, None, geometry=True)
    next(again)
    assert finished(again).read == whole.read


class TestComparing:
    @pytest.fixture
    def comparing(self, window_library, layer):
        """Compares what the layer holds with nothing recorded; ``busy``: whether somebody else needs the layers."""
        from tautline.algorithms.entry.run_record import RunRecord
        from tautline.plugin.review.comparing import Comparing

        class Watched(Comparing):
            busy, found = False, None

        def ended(states):
            work.found = states

        work = Watched([("key", RunRecord(), layer)], ended, lambda: work.busy)
        yield work
        work.forget()

    @staticmethod
    def turned(work, turns):
        """Let the work take so many turns, as the window's loop does."""
        for _ in range(turns):
            work._next()
        return work

    @staticmethod
    def to_the_end(work):
        from qgis.PyQt.QtCore import QCoreApplication

        for _ in range(1000):
            if work.found is not None:
                return work.found
            QCoreApplication.processEvents()
            work._next()
        raise AssertionError("never ended")

    @pytest.fixture
    def expected(self, layer):
        from qgis.core import QgsProcessingContext

        from tautline.algorithms.entry.written_rows import RowsNow, rows_reading

        return {"key": RowsNow(rows_reading(layer, QgsProcessingContext()))}

    def test_one_slice_a_turn(self, comparing, expected):
        assert self.turned(comparing, 2).found is None
        assert self.to_the_end(comparing) == expected

    def test_begins_anew_where_it_had_to_let_go(self, comparing, expected):
        self.turned(comparing, 2).let_go()
        assert comparing._reading is None
        assert self.to_the_end(comparing) == expected

    def test_holds_no_layer_while_a_run_goes_on(self, comparing, expected):
        self.turned(comparing, 2).busy = True
        assert self.turned(comparing, 1)._reading is None and comparing.found is None
        comparing.busy = False
        assert self.to_the_end(comparing) == expected
