select count(*) from <table> not indexed
