export const createProof = "CREATE TABLE proof (mark TEXT NOT NULL) STRICT";
export const writeProof = "INSERT INTO proof (mark) VALUES (:mark)";
export const readProof = "SELECT mark FROM proof";
