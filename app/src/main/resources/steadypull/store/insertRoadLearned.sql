insert into road_learned (origin, passes) values (:origin, :passes)
on conflict (origin) do nothing
