"""Words that the core answers with and sentences translate: it knows no language itself."""

from .translation import translatable

# Kinds of columns in a list.
COLUMNS = (
    translatable("station"),
    translatable("offset"),
    translatable("height"),
    translatable("axis"),
    translatable("undulation"),
)
# What a reading that stands off its neighbours looks like.
SUSPICIONS = (
    translatable("transposed digits"),
    translatable("slipped decimal point"),
    translatable("feet taken for metres"),
    translatable("metres taken for feet"),
)
# How the numbers of a column were written.
NUMBER_NOTES = (
    translatable("feet and inches"),
    translatable("decimal comma"),
    translatable("negative numbers in brackets"),
    translatable("signs behind the number"),
    translatable("thousands in groups"),
    translatable("units beside the numbers"),
)
# Why a row of a levelling book cannot be used.
BOOK_REASONS = (
    translatable("an intermediate sight stands beside a back or a fore sight"),
    translatable("no fore sight follows it"),
    translatable("the row has no reading"),
    translatable("no back sight goes before it"),
)
# Shapes that heights are tested for.
SHAPES = (
    translatable("level"),
    translatable("grade"),
    translatable("straight"),
    translatable("8-inch rule"),
    translatable("sphere"),
    translatable("free"),
)
# Of a tangent or level point.
POINT_STATES = (translatable("inside"), translatable("outside"), translatable("poorly determined"))
