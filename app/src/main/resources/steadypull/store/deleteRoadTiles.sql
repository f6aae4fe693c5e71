delete from road_tile
