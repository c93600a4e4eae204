#!/bin/sh
# Writes demo/terrain/second-survey.tif with GDAL (Debian package gdal-bin), so that the demo also holds a raster that our own
# generator did not write: WGS 84 UTM, zone 10 south, whole meters, tiles, LZW, holes along its slanted edges.
set -eu
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
node tools/make-demo-terrain.mjs --survey "$work/ground.tif"
rm -f demo/terrain/second-survey.tif
gdalwarp -q -nomd -t_srs EPSG:32710 -tr 40 40 -tap -r bilinear -ot Int16 -dstnodata -32768 \
  -co COMPRESS=LZW -co PREDICTOR=2 -co TILED=YES -co BLOCKXSIZE=128 -co BLOCKYSIZE=128 \
  "$work/ground.tif" demo/terrain/second-survey.tif
