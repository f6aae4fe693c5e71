insert into road_tile (tile_key, tile) values (:tileKey, :tile)
on conflict (tile_key) do update set tile = excluded.tile
