"""What a page must reach."""

LEAST_CONTRAST = 7.0
LEAST_X_HEIGHT_MM = 1.2
# 18 points of a letter whose x is half as high as its type (18 x 0.3528 x 0.508).
LEAST_LARGE_MM = 3.2
RULER_ERROR = 0.005
