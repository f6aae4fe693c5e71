insert into road_learned (origin, passes)
select origin, 0 from trip where sealed = 1
on conflict (origin) do nothing
