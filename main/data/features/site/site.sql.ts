export const listSitesSql = `SELECT site.*, (SELECT count(*) FROM lift WHERE lift.siteId = site.id AND lift.deleted = 0) AS liftCount
  FROM site WHERE site.deleted = 0 ORDER BY site.name`;
