/** Words that no German sentence of ours holds: where one stands, something was not translated. */
export const ENGLISH_WORDS =
  /\b(the|is|are|its|were|and|of|not|with|for|from|which|that|this|it|your|could|cannot|heard|played|missing|hands|notes?|steps?|beats|file|recordings?|right|wrong|sound)\b/i;
