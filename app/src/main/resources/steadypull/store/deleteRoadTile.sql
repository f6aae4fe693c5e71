delete from road_tile where tile_key = :tileKey
