// Spanish words of the guided first job: what to do, and what was seen once it is
// done.

export const guide = {
  title: "Un primer trabajo",
  offer: "¿Primera vez aquí? Un primer trabajo, paso a paso, lleva cinco minutos. No se pierde nada de lo suyo.",
  start: "Empezar el primer trabajo", notNow: "Ahora no",
  again: "Cinco minutos, ocho pasos, con la página de verdad. Su vasija se puede recuperar al final.",
  step: (i: number, n: number) => `Paso ${i} de ${n}`,
  done: "Hecho", show: "Mostrar dónde", skip: "Saltar este paso", next: "Paso siguiente", leave: "Salir", finish: "Terminar",
  over: "Esto ha sido un trabajo entero: forma, partes, utillaje, colada, hojas, y un archivo que lo recupera todo.",
  left: "Se ha salido del primer trabajo.",
  back: (name: string) => `Recuperar ${name}`, keep: "Conservar lo que hay en el banco",
  broughtBack: "vasija de antes del primer trabajo recuperada",
  steps: {
    pot: {
      todo: "Ponga el Vaso Junco en el banco: abra Muestras y elíjalo.",
      seen: "La línea sobre el dibujo es el veredicto: una parte, y libre. Es siempre el de la vasija del banco.",
    },
    move: {
      todo: "Lleve el borde hacia dentro: arrastre su nodo en el dibujo hacia el eje, o selecciónelo y pulse − junto a su r (con teclas: Mayús y flecha izquierda), hasta que una parte ya no baste.",
      seen: "Ahora la pared se inclina hacia dentro cerca del borde. Una sola parte inferior se engancharía o rozaría ahí, por lo que el veredicto pide más partes.",
    },
    free: {
      todo: "Haga que vuelva a desmoldarse: abra Desmolde, busque la forma más próxima que se desmolda en una parte y úsela; o pulse Deshacer.",
      seen: "Vuelve a bastar una parte. La forma más próxima cambia los radios lo menos posible.",
    },
    apart: {
      todo: "Abra Partes y desmonte el molde: mueva hasta el final el control deslizante bajo el dibujo.",
      seen: "El yeso sale a lo largo de su tiro y no da con nada. Donde se atasca, el control se para y lo dice.",
    },
    tooling: {
      todo: "Abra Utillaje.",
      seen: "Estas son las piezas que imprimir para este molde. Cada una se imprime sin soportes y se puede obtener como archivo.",
    },
    wall: {
      todo: "Abra Colada y escriba otra pared de la pieza, como 5 mm.",
      seen: "El tiempo en el molde ha cambiado con ella, según el cuadrado de la pared. El yeso y el agua que pesar están arriba.",
    },
    sheet: {
      todo: "Abra Hojas y descargue una como PDF.",
      seen: "Imprímala al 100 % y ponga una regla sobre las barras antes de fiarse de ella.",
    },
    save: {
      todo: "Guarde el trabajo.",
      seen: "El archivo contiene el trabajo entero. Ábralo aquí, o en cualquier otro equipo, para seguir.",
    },
  },
};
