select id, name from route order by route_key
