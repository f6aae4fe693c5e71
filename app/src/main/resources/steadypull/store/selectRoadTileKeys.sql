select tile_key from road_tile order by tile_key
