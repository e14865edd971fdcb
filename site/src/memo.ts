// A component that is drawn anew only when what it is given is not the same, or
// the language is another: a drawing has layers that a move of one node leaves as
// they are. What such a component shows comes from its properties alone.
import { createElement, type FunctionComponent, type VNode } from "preact";
import { useRef } from "preact/hooks";
import { language } from "./words";

export function memo<P extends object>(draw: FunctionComponent<P>): FunctionComponent<P> {
  return (props) => {
    const last = useRef<{ drawn: VNode<P>; language: string } | null>(null), was = last.current;
    const same = was?.language === language && (Object.keys(props) as (keyof P)[]).every((k) => was.drawn.props[k] === props[k]);
    if (!same) last.current = { drawn: createElement(draw, props), language };
    return last.current!.drawn; // what is the very same is left as it stands
  };
}
