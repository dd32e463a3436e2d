export interface TitleBlockWords {
  readonly company: string;
  readonly site: string;
  readonly lift: string;
  readonly date: string;
  readonly person: string;
  readonly scale: string;
  readonly page: string;
}

/** The title block of a printed drawing: whose it is, of what, when, by whom, to which scale, which page. */
export function TitleBlock(props: TitleBlockWords) {
  return (
    <dl className="drawing-title-block">
      <Entry words="Company" value={props.company} />
      <Entry words="Site" value={props.site} />
      <Entry words="Lift" value={props.lift} place="row-end" />
      <Entry words="Scale" value={props.scale} place="wide" />
      <Entry words="Drawing" value="Shaft section" place="row-end" />
      <Entry words="Date" value={props.date} place="last-row" />
      <Entry words="By" value={props.person} place="last-row" />
      <Entry words="Page" value={props.page} place="row-end last-row" />
    </dl>
  );
}

function Entry(props: { readonly words: string; readonly value: string; readonly place?: string }) {
  return (
    <div className={props.place ?? ""}>
      <dt>{props.words}</dt>
      <dd>{props.value}</dd>
    </div>
  );
}
