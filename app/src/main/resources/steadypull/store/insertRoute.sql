insert into route (id, name, route_file) values (:id, :name, :routeFile)
on conflict (id) do nothing
