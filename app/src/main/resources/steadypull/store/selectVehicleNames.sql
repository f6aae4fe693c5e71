select name from vehicle order by used_order desc
